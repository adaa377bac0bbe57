package sledwright.restock;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;
import sledwright.restock.Hindsight.Plane;
import sledwright.restock.Program.Purchase;

/**
 * Which purchases look best by the planes that are known: a linear program, in which units may be broken and least quantities do not count.
 */
final class Master {

    private static final double SCALE = 10_000;

    /**
     * @param bound  no purchase within the budget earns more by these planes
     * @param bought units of each purchase
     */
    record Answer(double bound, double[] bought) {
    }

    private final Program program;
    private final int groups;
    /** Planes of each group, over purchases. */
    private final List<List<Plane>> planes = new ArrayList<>();

    Master(Program program, int groups) {
        this.program = program;
        this.groups = groups;
        for (int g = 0; g < groups; g++) {
            planes.add(new ArrayList<>());
        }
    }

    /** Adds a plane over limits as one over purchases. */
    void add(int group, Plane overLimits) {
        double[] slope = new double[program.purchases().size()];
        for (int o = 0; o < slope.length; o++) {
            for (int row : program.purchases().get(o).rows()) {
                slope[o] += overLimits.slope()[row];
            }
        }
        double constant = overLimits.constant();
        double[] standing = program.limits(new double[0]);
        for (int i = 0; i < standing.length; i++) {
            constant += overLimits.slope()[i] * standing[i];
        }
        planes.get(group).add(new Plane(constant, slope));
    }

    /** @param budget minor units; empty: any amount */
    Answer solve(OptionalLong budget) {
        ExpressionsBasedModel model = new ExpressionsBasedModel();
        List<Purchase> purchases = program.purchases();
        Variable[] units = new Variable[purchases.size()];
        Expression spent = budget.isPresent() ? model.newExpression("budget").upper(budget.getAsLong() / SCALE) : null;
        for (int o = 0; o < units.length; o++) {
            Purchase purchase = purchases.get(o);
            units[o] = model.newVariable("q" + o).lower(0).upper(purchase.offer().available()).weight(-purchase.loss() / SCALE);
            if (spent != null) {
                spent.set(units[o], purchase.offer().unitCost() / SCALE);
            }
        }
        for (int g = 0; g < groups; g++) {
            Variable earned = model.newVariable("e" + g).lower(0).weight(1);
            int number = 0;
            for (Plane plane : planes.get(g)) {
                Expression limit = model.newExpression("p" + g + "." + number++).upper(plane.constant() / SCALE);
                limit.set(earned, 1);
                for (int o = 0; o < units.length; o++) {
                    if (plane.slope()[o] != 0) {
                        limit.set(units[o], -plane.slope()[o] / SCALE);
                    }
                }
            }
        }
        Optimisation.Result result = model.maximise();
        if (!result.getState().isFeasible()) {
            return null;
        }
        double[] bought = new double[units.length];
        double bound = 0;
        for (int o = 0; o < bought.length; o++) {
            bought[o] = Math.min(Math.max(0, units[o].getValue().doubleValue()), purchases.get(o).offer().available());
            bound -= purchases.get(o).loss() * bought[o];
        }
        for (int g = 0; g < groups; g++) {
            double least = Double.POSITIVE_INFINITY;
            for (Plane plane : planes.get(g)) {
                double height = plane.constant();
                for (int o = 0; o < bought.length; o++) {
                    height += plane.slope()[o] * bought[o];
                }
                least = Math.min(least, height);
            }
            bound += least;
        }
        return new Answer(bound, bought);
    }
}
