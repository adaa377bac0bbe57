package sledwright.metrics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import sledwright.domain.Lot;
import sledwright.domain.Pick;

/**
 * The cheapest way to take units from lots.
 *
 * <p>A lot's price list makes the price of a draw neither convex nor monotone, so this is a dynamic program over the lots;
 * within one price break the best share of a lot is the least of a sliding window, which makes it lots x breaks x units.
 */
public final class CheapestDraw {

    /** The price of a number of units that the lots cannot give. */
    public static final long IMPOSSIBLE = Long.MAX_VALUE / 4;

    private CheapestDraw() {
    }

    /** The least price (minor units) of each number of units from 0 to {@code most}; {@link #IMPOSSIBLE} where there is none. */
    public static long[] prices(List<Lot> lots, int most) {
        long[] prices = nothing(most);
        for (Lot lot : lots) {
            prices = with(prices, lot);
        }
        return prices;
    }

    /** The greatest number of units that there is a price for; 0 where there is none. */
    public static int most(long[] prices) {
        int most = prices.length - 1;
        while (most > 0 && prices[most] >= IMPOSSIBLE) {
            most--;
        }
        return most;
    }

    /** The picks of a cheapest draw of exactly {@code units}; of equals the one that leans on earlier lots; null where there is none. */
    public static List<Pick> picks(List<Lot> lots, int units) {
        List<long[]> before = new ArrayList<>(lots.size());
        long[] prices = nothing(units);
        for (Lot lot : lots) {
            before.add(prices);
            prices = with(prices, lot);
        }
        if (prices[units] >= IMPOSSIBLE) {
            return null;
        }
        List<Pick> picks = new ArrayList<>();
        int left = units;
        long price = prices[units];
        for (int i = lots.size() - 1; i >= 0; i--) {
            int taken = taken(before.get(i), lots.get(i), left, price);
            if (taken > 0) {
                Pick pick = new Pick(lots.get(i), taken);
                picks.add(0, pick);
                left -= taken;
                price -= pick.total();
            }
        }
        return picks;
    }

    private static int taken(long[] before, Lot lot, int left, long price) {
        for (int taken = 0; taken <= left; taken = Math.max(taken + 1, lot.minQuantity())) {
            if (lot.sells(taken) && before[left - taken] < IMPOSSIBLE) {
                long own = taken == 0 ? 0 : new Pick(lot, taken).total();
                if (before[left - taken] + own == price) {
                    return taken;
                }
            }
        }
        throw new IllegalStateException("no share of lot %s of %s explains the price".formatted(lot.lot(), lot.sku()));
    }

    private static long[] nothing(int most) {
        long[] prices = new long[most + 1];
        Arrays.fill(prices, 1, most + 1, IMPOSSIBLE);
        return prices;
    }

    private static long[] with(long[] before, Lot lot) {
        long[] after = before.clone();
        List<Lot.PriceBreak> breaks = lot.breaks();
        for (int i = 0; i < breaks.size(); i++) {
            int from = breaks.get(i).minQuantity();
            int to = i + 1 < breaks.size() ? breaks.get(i + 1).minQuantity() - 1 : lot.available();
            improve(before, after, breaks.get(i).unitPrice(), from, Math.min(to, lot.available()));
        }
        return after;
    }

    /** Offers the lot's {@code from} to {@code to} units at one unit price to every total. */
    private static void improve(long[] before, long[] after, long unitPrice, int from, int to) {
        int size = after.length;
        if (from > to || from >= size) {
            return;
        }
        int[] window = new int[size];
        int head = 0;
        int tail = 0;
        for (int total = from; total < size; total++) {
            int entering = total - from;
            if (before[entering] < IMPOSSIBLE) {
                long value = before[entering] - unitPrice * entering;
                while (tail > head && before[window[tail - 1]] - unitPrice * window[tail - 1] >= value) {
                    tail--;
                }
                window[tail++] = entering;
            }
            while (tail > head && window[head] < total - to) {
                head++;
            }
            if (tail > head) {
                long price = before[window[head]] + unitPrice * (total - window[head]);
                if (price < after[total]) {
                    after[total] = price;
                }
            }
        }
    }
}
