package sledwright.restock;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import sledwright.generator.time.Deadline;
import sledwright.planner.linear.LinearProgram;
import sledwright.planner.linear.LinearProgram.Row;
import sledwright.planner.linear.LinearProgram.Variable;
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
    /** Planes of each group, over purchases. */
    private final List<List<Plane>> planes = new ArrayList<>();

    Master(Program program, int groups) {
        this.program = program;
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
        planes.get(group).add(new Plane(overLimits.at(program.limits(new double[0])), slope));
    }

    /** @param budget minor units; empty: any amount */
    Answer solve(OptionalLong budget) {
        LinearProgram linear = new LinearProgram();
        List<Purchase> purchases = program.purchases();
        List<Variable> units = new ArrayList<>();
        purchases.forEach(purchase -> units.add(linear.variable(purchase.offer().available(), purchase.loss() / SCALE)));
        if (budget.isPresent()) {
            Row spent = linear.atMost(budget.getAsLong() / SCALE);
            for (int o = 0; o < units.size(); o++) {
                spent.add(units.get(o), purchases.get(o).offer().unitCost() / SCALE);
            }
        }
        for (List<Plane> group : planes) {
            Variable earned = linear.variable(-1);
            for (Plane plane : group) {
                Row limit = linear.atMost(plane.constant() / SCALE).add(earned, 1);
                for (int o = 0; o < units.size(); o++) {
                    if (plane.slope()[o] != 0) {
                        limit.add(units.get(o), -plane.slope()[o] / SCALE);
                    }
                }
            }
        }
        return linear.solve(Deadline.never()).map(answer -> answer(units.stream().mapToDouble(answer::of).toArray())).orElse(null);
    }

    private Answer answer(double[] units) {
        double[] bought = new double[units.length];
        double bound = 0;
        for (int o = 0; o < bought.length; o++) {
            Purchase purchase = program.purchases().get(o);
            bought[o] = Math.min(Math.max(0, units[o]), purchase.offer().available());
            bound -= purchase.loss() * bought[o];
        }
        for (List<Plane> group : planes) {
            bound += group.stream().mapToDouble(plane -> plane.at(bought)).min().orElse(Double.POSITIVE_INFINITY);
        }
        return new Answer(bound, bought);
    }
}
