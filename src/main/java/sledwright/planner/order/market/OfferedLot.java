package sledwright.planner.order.market;

import java.util.ArrayList;
import java.util.List;
import sledwright.domain.Lot;

/**
 * A lot that an order may draw on.
 *
 * @param part     index of its part
 * @param pools    for each pool whether its lines accept the lot
 * @param supplier index of who delivers it; -1 for what nobody has to deliver: the customer's own, and the shop's own shelf
 * @param most     units that the order could use of it
 * @param steps    its price list within that number
 */
public record OfferedLot(Lot lot, int part, boolean[] pools, int supplier, int most, List<Step> steps) {

    /**
     * A unit price and the numbers of units that it holds for.
     *
     * @param price of one unit, scaled
     */
    public record Step(int least, int most, long price) {
    }

    public static OfferedLot of(Lot lot, int part, boolean[] pools, int supplier, int useful) {
        int most = Math.min(lot.available(), useful);
        List<Step> steps = new ArrayList<>();
        for (int i = 0; i < lot.breaks().size(); i++) {
            int least = Math.max(1, lot.breaks().get(i).minQuantity());
            int until = i + 1 < lot.breaks().size() ? Math.min(most, lot.breaks().get(i + 1).minQuantity() - 1) : most;
            if (least <= until) {
                steps.add(new Step(least, until, lot.breaks().get(i).unitPrice() * ScaledMoney.ONE));
            }
        }
        return new OfferedLot(lot, part, pools, supplier, most, List.copyOf(steps));
    }

    /** Lots are looked up very often, and hardly two are alike in these. */
    @Override
    public int hashCode() {
        return 31 * (31 * part + supplier) + most;
    }

    /** Whether it gives any of these numbers of units. */
    public boolean sells(Range range) {
        return range.least() <= 0 || steps.stream().anyMatch(step -> Math.max(step.least, range.least()) <= Math.min(step.most,
                range.most()));
    }

    /** The most that drawing a given number of units can gain where a unit has a given worth, scaled; below 0 where it must lose. */
    public long gain(long worth, Range range) {
        long gain = range.least() <= 0 ? 0 : Long.MIN_VALUE / 4;
        for (Step step : steps) {
            int from = Math.max(step.least, range.least());
            int to = Math.min(step.most, range.most());
            if (from <= to) {
                gain = Math.max(gain, (worth - step.price) * (worth > step.price ? to : from));
            }
        }
        return gain;
    }
}
