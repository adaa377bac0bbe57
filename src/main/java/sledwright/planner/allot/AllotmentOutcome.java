package sledwright.planner.allot;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.domain.Lot;

/**
 * What was decided, and how good it is.
 *
 * @param greedy    how good it is to give every promise in turn the cheapest that is left
 * @param found     how good the allotment is
 * @param bound     what none goes below
 * @param outcomes  each promise with what the constraints say of it
 * @param left      the shop's lots with what is left in them
 * @param times     how long it took
 */
public record AllotmentOutcome(Allotment.Figures greedy, Allotment.Figures found, Bound bound, List<Outcome> outcomes,
                               Map<LotName, Lot> left, Times times) {

    /**
     * What no allotment goes below.
     *
     * @param broken  machines that are not delivered
     * @param changed machines that are changed, where no more are undelivered
     * @param cost    minor units, where no more are undelivered and changed; NaN: not known
     */
    public record Bound(int broken, int changed, double cost) {
    }

    /** Seconds that greedy, bound and decision took. */
    public record Times(double greedy, double bound, double decision) {
    }

    /**
     * What becomes of one promise.
     *
     * @param filling empty: it cannot be kept
     * @param changed whether its machines hold parts that the customer was not told of
     * @param moved   units that come from lots of which it did not keep them
     */
    public record Outcome(Promise promise, Optional<Filling> filling, boolean changed, int moved) {
    }

    public AllotmentOutcome {
        outcomes = List.copyOf(outcomes);
        left = Map.copyOf(left);
    }

    /** How far the cost is above the bound at most, as a share of it; empty where that is not known. */
    public Optional<Double> gap() {
        return Double.isNaN(bound.cost()) || found.cost() <= 0 ? Optional.empty()
                : Optional.of(Math.max(0, found.cost() - Math.ceil(bound.cost() - 0.01)) / found.cost());
    }
}
