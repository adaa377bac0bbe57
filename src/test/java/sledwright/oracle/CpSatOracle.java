package sledwright.oracle;

import com.google.ortools.Loader;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.LinearExpr;
import java.util.Optional;
import sledwright.domain.Objective;
import sledwright.domain.Platform;

/**
 * The best of a case by an outside solver (CP-SAT of OR-Tools): one model for each platform and number of processors. For
 * one machine and the objectives cheapest, most-memory and most-throughput.
 */
final class CpSatOracle {

    /**
     * The best order.
     *
     * @param aim   usable memory or throughput in the model's own fine units, more is better; 0 where the price is the aim
     * @param price minor units
     */
    record Best(long aim, long price) {
    }

    private CpSatOracle() {
    }

    /** The best order of a case; empty where there is none. */
    static Optional<Best> solve(RandomCase that) {
        Loader.loadNativeLibraries();
        if (that.request().machines() != 1) {
            throw new IllegalArgumentException("the model knows one machine only");
        }
        Best best = null;
        for (Platform platform : that.catalog().platforms()) {
            for (int fitted : platform.processors().counts()) {
                Best here = solve(that, platform, fitted, best);
                best = here == null ? best : here;
            }
        }
        return Optional.ofNullable(best);
    }

    /** The best of one model where it is better than what is known, else null. */
    private static Best solve(RandomCase that, Platform platform, int fitted, Best known) {
        CpSatModel model = new CpSatModel(that, platform, fitted);
        LinearExpr aim = aim(model, that.request().objective());
        if (aim == null) {
            if (known != null) {
                model.model.addLessOrEqual(model.price(), known.price - 1);
            }
            Long price = least(model, model.price());
            return price == null ? null : new Best(0, price);
        }
        if (known != null) {
            model.model.addGreaterOrEqual(aim, known.aim);
        }
        Long most = least(model, LinearExpr.affine(aim, -1, 0));
        if (most == null) {
            return null;
        }
        model.model.addEquality(aim, -most);
        if (known != null && known.aim == -most) {
            model.model.addLessOrEqual(model.price(), known.price - 1);
        }
        Long price = least(model, model.price());
        return price == null ? null : new Best(-most, price);
    }

    private static LinearExpr aim(CpSatModel model, Objective objective) {
        return switch (objective) {
            case CHEAPEST -> null;
            case MOST_MEMORY -> model.usable();
            case MOST_THROUGHPUT -> model.throughput();
            case MOST_BANDWIDTH, BEST_VALUE -> throw new IllegalArgumentException("no model of " + objective);
        };
    }

    private static Long least(CpSatModel model, LinearExpr figure) {
        model.model.minimize(figure);
        CpSolver solver = new CpSolver();
        solver.getParameters().setNumWorkers(1).setRandomSeed(1);
        CpSolverStatus status = solver.solve(model.model);
        return switch (status) {
            case OPTIMAL -> Math.round(solver.objectiveValue());
            case INFEASIBLE -> null;
            default -> throw new IllegalStateException("the solver ends with %s: %s".formatted(status, model.model.validate()));
        };
    }
}
