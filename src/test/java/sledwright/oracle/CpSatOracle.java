package sledwright.oracle;

import com.google.ortools.Loader;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.SatParameters;
import java.util.Optional;
import java.util.function.Consumer;
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

    /** The solver came to no end. */
    static final class UndecidedException extends RuntimeException {
    }

    /** In the solver's own units, which do not depend on the machine's speed; very roughly seconds. */
    private static final double TIME = 1.5;

    private CpSatOracle() {
    }

    /**
     * An order that is better than a known one, or any where none is known: the best of them where the solver's time
     * suffices; empty where there is none.
     *
     * @throws UndecidedException when the solver can't tell in its time
     */
    static Optional<Best> better(RandomCase that, Best known) {
        return better(that, known, parameters -> parameters.setNumWorkers(1).setRandomSeed(1).setMaxDeterministicTime(TIME));
    }

    /** @param settings of the solver, asked for again for each model */
    static Optional<Best> better(RandomCase that, Best known, Consumer<SatParameters.Builder> settings) {
        Loader.loadNativeLibraries();
        if (that.request().machines() != 1) {
            throw new IllegalArgumentException("the model knows one machine only");
        }
        Best best = known;
        for (Platform platform : that.catalog().platforms()) {
            for (int fitted : platform.processors().counts()) {
                Best here = solve(that, platform, fitted, best, settings);
                best = here == null ? best : here;
            }
        }
        return best == known ? Optional.empty() : Optional.of(best);
    }

    /** The best of one model where it is better than what is known, else null. */
    private static Best solve(RandomCase that, Platform platform, int fitted, Best known,
            Consumer<SatParameters.Builder> settings) {
        CpSatModel model = new CpSatModel(that, platform, fitted);
        LinearExpr aim = aim(model, that.request().objective());
        Answer most = new Answer(0L, true);
        if (aim != null) {
            if (known != null) {
                model.model.addGreaterOrEqual(aim, known.aim);
            }
            most = least(model, LinearExpr.affine(aim, -1, 0), settings);
            if (most.value == null) {
                return most.orNothing();
            }
            model.model.addEquality(aim, -most.value);
        }
        if (known != null && known.aim == -most.value) {
            model.model.addLessOrEqual(model.price(), known.price - 1);
        }
        Answer price = least(model, model.price(), settings);
        if (price.value == null) {
            return new Answer(null, price.proved && most.proved).orNothing();
        }
        return new Best(-most.value, price.value);
    }

    private static LinearExpr aim(CpSatModel model, Objective objective) {
        return switch (objective) {
            case CHEAPEST -> null;
            case MOST_MEMORY -> model.usable();
            case MOST_THROUGHPUT -> model.throughput();
            case MOST_BANDWIDTH, BEST_VALUE, MOST_WORK, MOST_CORES, LEAST_TOTAL -> throw new IllegalArgumentException("no model of " + objective);
        };
    }

    /** The least figure that was found, null where there is none; and whether that is proved. */
    private record Answer(Long value, boolean proved) {

        Best orNothing() {
            if (!proved) {
                throw new UndecidedException();
            }
            return null;
        }
    }

    private static Answer least(CpSatModel model, LinearExpr figure, Consumer<SatParameters.Builder> settings) {
        model.model.minimize(figure);
        CpSolver solver = new CpSolver();
        settings.accept(solver.getParameters());
        CpSolverStatus status = solver.solve(model.model);
        return switch (status) {
            case OPTIMAL, FEASIBLE -> new Answer(Math.round(solver.objectiveValue()), status == CpSolverStatus.OPTIMAL);
            case INFEASIBLE -> new Answer(null, true);
            case UNKNOWN -> new Answer(null, false);
            default -> throw new IllegalStateException("the solver ends with %s: %s".formatted(status, model.model.validate()));
        };
    }
}
