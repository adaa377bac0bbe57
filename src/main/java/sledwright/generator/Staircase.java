package sledwright.generator;

import java.util.List;
import java.util.OptionalDouble;
import sledwright.rules.Order;

/**
 * How a figure of a machine rises with the money that is spent: the builds than which none is as cheap and better in that figure,
 * nor as good and cheaper.
 *
 * @param steps  the cheapest first, one for each cost
 * @param proved how many of the first steps are proved
 * @param doubts whether all steps are, and none is missing
 * @param bound  where not: what a build costs at least, in minor units, that is better in the figure than the last proved step;
 *               empty where the search did not get far enough to decide
 */
public record Staircase(Axis axis, List<Step> steps, int proved, Doubts doubts, OptionalDouble bound) {

    public Staircase {
        steps = List.copyOf(steps);
    }

    /**
     * A build of a staircase.
     *
     * @param cost   what the staircase weighs: the price of all machines, or that and their energy; minor units
     * @param figure of one machine
     */
    public record Step(Order order, long cost, double figure) {
    }
}
