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
 * @param buys      what to buy; may be empty
 * @param with      what is earned with it
 * @param without   what is earned if nothing is bought
 * @param gain      the difference, course by course
 * @param bound     no plan within the budget earns more on the courses it was made on, whatever builds of those known fill orders
 * @param rounded   what the whole quantities nearest to the bound's own earn there where each course is known before orders are filled;
 *                  at most
 * @param roundedInSample what they earn there where orders are served as they come
 * @param hindsight what this plan earns there where each course is known before orders are filled; at most
 * @param inSample  what it earns there where orders are served as they come
 * @param closed    whether the search found no build that would be worth more than the known ones at the shadow prices of the bound
 * @param builds    how many builds of all classes are known
 * @param courses   how many courses the plan was made on, and as many others it was tried on
 * @param late      whether time ran out before all was done
 */
public record RestockPlan(RestockRequest request, List<Buy> buys, Expected with, Expected without, Expected gain, double bound,
                          double rounded, double roundedInSample, double hindsight, double inSample, boolean closed, int builds,
                          int courses, boolean late, List<ClassOutlook> classes, List<PartOutlook> parts, List<CurvePoint> curve) {

    public RestockPlan {
        buys = List.copyOf(buys);
        classes = List.copyOf(classes);
        parts = List.copyOf(parts);
        curve = List.copyOf(curve);
    }

    /** What all purchases cost. */
    public long cost() {
        return buys.stream().mapToLong(Buy::cost).sum();
    }

    /** Share of the bound by which this plan falls short, both with hindsight. */
    public double gap() {
        return below(hindsight);
    }

    /** Share of the bound by which its own quantities fall short once they are whole, both with hindsight. */
    public double roundedGap() {
        return below(rounded);
    }

    private double below(double earned) {
        return bound == 0 ? 0 : Math.max(0, (bound - earned) / Math.abs(bound));
    }

    /** Parts that stand on the shelf and go into no order of any course. */
    public List<PartOutlook> dead() {
        return parts.stream().filter(PartOutlook::isDead).toList();
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
     * @param used units of the part that orders take, from the shelf and bought, mean
     * @param why  a finished sentence
     */
    public record Buy(SupplyOffer offer, int quantity, double used, String why) {

        public long cost() {
            return offer.unitCost() * quantity;
        }
    }

    /**
     * What orders of a class have to expect.
     *
     * @param orders     in the horizon, mean
     * @param filled     share that is filled with the plan
     * @param without    share that is filled if nothing is bought
     * @param halfWidth  of the 95 % confidence interval of {@code filled}
     * @param revenue    what the customer pays for an order; empty where nothing can be built
     * @param cost       what the cheapest order costs at what parts are worth today
     * @param impossible why nothing can be built; empty where something can
     */
    public record ClassOutlook(String name, double orders, double filled, double without, double halfWidth, OptionalLong revenue,
                               OptionalLong cost, Optional<Explanation> impossible) {

        /** Whether a build exists that earns something, and no order gets one. */
        public boolean isLeftOut() {
            return revenue.isPresent() && !isUnprofitable() && orders > 0 && filled == 0;
        }

        /** Whether a build exists, and none that earns anything. */
        public boolean isUnprofitable() {
            return revenue.isPresent() && cost.isPresent() && revenue.getAsLong() <= cost.getAsLong();
        }
    }

    /**
     * A part.
     *
     * @param standing  units that the shop has or is sent already
     * @param bought    units that the plan buys
     * @param used      units that orders take, mean
     * @param deviation of the units that orders take, from course to course
     * @param worth     what a unit is worth today
     * @param oneMore   what one more unit would add, its worth at the end included
     * @param lost      what the units that are left over lose, mean
     * @param mostPrice the highest price at which a unit is as good as doing without it, over all classes; empty: in none
     */
    public record PartOutlook(String sku, int standing, int bought, double used, double deviation, long worth, double oneMore,
                              double lost, OptionalLong mostPrice) {

        public boolean isDead() {
            return standing > 0 && used == 0;
        }

        /** Units that are left over, mean. */
        public double left() {
            return standing + bought - used;
        }
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
