package sledwright.restock;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import sledwright.domain.RestockRequest;
import sledwright.domain.SupplyOffer;
import sledwright.explain.Explanation;

/**
 * What to buy, and what is expected of it. Amounts are minor units of the currency; means may be broken.
 *
 * @param buys what to buy; may be empty
 */
public record RestockPlan(RestockRequest request, List<Buy> buys, Earned earned, Bound bound, Effort effort, List<ClassOutlook> classes,
                          List<PartOutlook> parts) {

    public RestockPlan {
        buys = List.copyOf(buys);
        classes = List.copyOf(classes);
        parts = List.copyOf(parts);
    }

    /** What all purchases cost. */
    public long cost() {
        return buys.stream().mapToLong(Buy::cost).sum();
    }

    /** Parts that stand on the shelf and go into no order of any course. */
    public List<PartOutlook> dead() {
        return parts.stream().filter(PartOutlook::isDead).toList();
    }

    /**
     * What is earned.
     *
     * @param with    with the plan
     * @param without if nothing is bought
     * @param gain    the difference, course by course
     * @param curve   with plans for other budgets
     */
    public record Earned(Expected with, Expected without, Expected gain, List<CurvePoint> curve) {

        public Earned {
            curve = List.copyOf(curve);
        }
    }

    /**
     * How near the plan is to the best, on the courses that it was made on.
     *
     * @param most      no plan within the budget earns more there, whatever builds of those known fill orders
     * @param rounded   what the whole quantities nearest to the bound's own earn where each course is known before orders are filled;
     *                  at most
     * @param roundedInSample what they earn where orders are served as they come
     * @param hindsight what this plan earns where each course is known before orders are filled; at most
     * @param inSample  what it earns where orders are served as they come
     */
    public record Bound(double most, double rounded, double roundedInSample, double hindsight, double inSample) {

        /** Share of the bound by which this plan falls short, both with hindsight. */
        public double gap() {
            return below(hindsight);
        }

        /** Share of the bound by which its own quantities fall short once they are whole, both with hindsight. */
        public double roundedGap() {
            return below(rounded);
        }

        private double below(double earned) {
            return most == 0 ? 0 : Math.max(0, (most - earned) / Math.abs(most));
        }
    }

    /**
     * What was looked at.
     *
     * @param builds  how many builds of all classes are known
     * @param closed  whether the search found no build that would be worth more than the known ones at the shadow prices of the bound
     * @param courses how many courses the plan was made on, and as many others it was tried on
     * @param late    whether time ran out before all was done
     */
    public record Effort(int builds, boolean closed, int courses, boolean late) {
    }

    /**
     * A mean of the courses that the plan was tried on.
     *
     * @param halfWidth of the 95 % confidence interval
     */
    public record Expected(double mean, double halfWidth) {
    }

    /**
     * One purchase.
     *
     * @param why a finished sentence
     */
    public record Buy(SupplyOffer offer, int quantity, String why) {

        public long cost() {
            return offer.unitCost() * quantity;
        }
    }

    /**
     * What orders of a class have to expect.
     *
     * @param orders     in the horizon, mean
     * @param revenue    what the customer pays for an order; empty where nothing can be built
     * @param cost       what the cheapest order costs at what parts are worth today
     * @param impossible why nothing can be built; empty where something can
     */
    public record ClassOutlook(String name, double orders, Filled filled, OptionalLong revenue, OptionalLong cost,
                               Optional<Explanation> impossible) {

        /** Whether a build exists that earns something, and no order gets one. */
        public boolean isLeftOut() {
            return revenue.isPresent() && !isUnprofitable() && orders > 0 && filled.with() == 0;
        }

        /** Whether a build exists, and none that earns anything. */
        public boolean isUnprofitable() {
            return revenue.isPresent() && cost.isPresent() && revenue.getAsLong() <= cost.getAsLong();
        }
    }

    /**
     * The share of a class's orders that is filled.
     *
     * @param with      with the plan
     * @param halfWidth of the 95 % confidence interval of that
     * @param without   if nothing is bought
     */
    public record Filled(double with, double halfWidth, double without) {
    }

    /** A part. */
    public record PartOutlook(String sku, Units units, Value value) {

        public boolean isDead() {
            return units.standing() > 0 && units.used() == 0;
        }
    }

    /**
     * Units of a part.
     *
     * @param standing  that the shop has or is sent already
     * @param bought    that the plan buys
     * @param used      that orders take, mean
     * @param deviation of these, from course to course
     */
    public record Units(int standing, int bought, double used, double deviation) {

        /** Units that are left over, mean. */
        public double left() {
            return standing + bought - used;
        }
    }

    /**
     * What a part is worth.
     *
     * @param worth     what a unit is worth today
     * @param oneMore   what one more unit would add, its worth at the end included
     * @param lost      what the units that are left over lose, mean
     * @param mostPrice the highest price at which a unit is as good as doing without it, over all classes; empty: in none
     */
    public record Value(long worth, double oneMore, double lost, OptionalLong mostPrice) {
    }

    /**
     * What another budget would bring.
     *
     * @param spent  of it
     * @param margin expected
     */
    public record CurvePoint(long budget, long spent, Expected margin) {
    }
}
