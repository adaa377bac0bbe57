package sledwright.oracle;

import java.util.Arrays;
import java.util.List;
import sledwright.domain.Lot;

/** The cheapest draw by trying every share of every lot. */
final class ExhaustiveDraw {

    static final long NONE = Long.MAX_VALUE / 8;

    private ExhaustiveDraw() {
    }

    /** Least price of exactly 0, 1, 2 ... units; {@link #NONE} where no draw gives that many. */
    static long[] prices(List<Lot> lots) {
        long[] prices = new long[1 + lots.stream().mapToInt(Lot::available).sum()];
        Arrays.fill(prices, NONE);
        draw(lots, 0, 0, 0, prices);
        return prices;
    }

    private static void draw(List<Lot> lots, int from, int units, long price, long[] prices) {
        if (from == lots.size()) {
            prices[units] = Math.min(prices[units], price);
            return;
        }
        Lot lot = lots.get(from);
        draw(lots, from + 1, units, price, prices);
        for (int taken = 1; taken <= lot.available(); taken++) {
            long unitPrice = unitPrice(lot, taken);
            if (unitPrice >= 0) {
                draw(lots, from + 1, units + taken, price + unitPrice * taken, prices);
            }
        }
    }

    /** The unit price when the lot gives a number of units: that of the largest minimum reached; -1 below the least. */
    static long unitPrice(Lot lot, int taken) {
        long price = -1;
        int reached = 0;
        for (Lot.PriceBreak step : lot.breaks()) {
            if (taken >= step.minQuantity() && step.minQuantity() >= reached) {
                reached = step.minQuantity();
                price = step.unitPrice();
            }
        }
        return price;
    }
}
