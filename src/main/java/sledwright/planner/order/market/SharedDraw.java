package sledwright.planner.order.market;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import sledwright.domain.Lot;
import sledwright.domain.Pick;
import sledwright.metrics.CheapestDraw;

/**
 * What units of a part cost that several pools need at once. Lots that the same pools accept are one {@link Store}, so all that has to be
 * chosen is how many units each store gives: exactly, or, where there are very many ways, by taking what is cheapest by the unit first. A
 * cheaper choice may exist then, which is never claimed; where no lot has a price break or a least number of units there is none, since
 * what stores can give is a polymatroid (Edmonds 1970).
 */
final class SharedDraw {

    /** Beyond this many ways to share units between stores they are not all tried. */
    private static final long MOST_WAYS = 10_000;

    private final List<Store> stores;
    private final List<boolean[]> accepts;
    private final long mostWays;

    /** Lots that the same pools accept, and what units of them cost. */
    private record Store(boolean[] pools, List<Lot> lots, long[] prices) {
    }

    /** @param sources the open lots of one part */
    SharedDraw(List<OfferedLot> sources) {
        this(sources, MOST_WAYS);
    }

    SharedDraw(List<OfferedLot> sources, long mostWays) {
        this.mostWays = mostWays;
        Map<List<Boolean>, List<OfferedLot>> byPools = new LinkedHashMap<>();
        sources.forEach(source -> byPools.computeIfAbsent(accepted(source), pools -> new ArrayList<>()).add(source));
        stores = new ArrayList<>();
        byPools.values().forEach(some -> {
            List<Lot> lots = some.stream().map(OfferedLot::lot).toList();
            stores.add(new Store(some.get(0).pools(), lots, CheapestDraw.prices(lots, some.stream().mapToInt(OfferedLot::most).sum())));
        });
        // The last gives what the others leave, so that it is not counted through.
        stores.sort(Comparator.comparingInt(store -> store.prices.length));
        accepts = stores.stream().map(Store::pools).toList();
    }

    private static List<Boolean> accepted(OfferedLot source) {
        List<Boolean> accepted = new ArrayList<>();
        for (boolean pool : source.pools()) {
            accepted.add(pool);
        }
        return accepted;
    }

    /** The least price of what each pool needs, minor units; {@link CheapestDraw#IMPOSSIBLE} where the lots cannot give it. */
    long price(int[] need) {
        int[] shares = shares(need);
        return shares == null ? CheapestDraw.IMPOSSIBLE : sum(shares);
    }

    /** The picks of each pool; null where the lots cannot give what is needed. A pick's own price is not that of the order. */
    Map<Integer, List<Pick>> picks(int[] need) {
        int[] shares = shares(need);
        if (shares == null) {
            return null;
        }
        StoreFlow flow = new StoreFlow(accepts, need);
        Map<Integer, List<Pick>> picks = new LinkedHashMap<>();
        for (int store = 0; store < shares.length; store++) {
            flow.push(store, shares[store]);
        }
        for (int store = 0; store < shares.length; store++) {
            Deque<Pick> taken = new ArrayDeque<>(CheapestDraw.picks(stores.get(store).lots, shares[store]));
            for (int pool = 0; pool < need.length; pool++) {
                int given = flow.given(store)[pool];
                while (given > 0) {
                    Pick first = taken.pop();
                    int some = Math.min(given, first.quantity());
                    picks.computeIfAbsent(pool, key -> new ArrayList<>()).add(new Pick(first.lot(), some));
                    if (some < first.quantity()) {
                        taken.push(new Pick(first.lot(), first.quantity() - some));
                    }
                    given -= some;
                }
            }
        }
        return picks;
    }

    /** What each store gives; null where the lots cannot give what is needed. */
    private int[] shares(int[] need) {
        int units = Arrays.stream(need).sum();
        if (!isExact(units)) {
            return cheapestFirst(need, units);
        }
        Choice choice = new Choice(need);
        choice.from(0, units, 0);
        return choice.best;
    }

    private boolean isExact(int units) {
        long ways = 1;
        for (int store = 0; store < stores.size() - 1 && ways <= mostWays; store++) {
            ways *= Math.min(units + 1, stores.get(store).prices.length);
        }
        return ways <= mostWays;
    }

    private long sum(int[] shares) {
        long price = 0;
        for (int store = 0; store < shares.length; store++) {
            price = Math.min(CheapestDraw.IMPOSSIBLE, price + stores.get(store).prices[shares[store]]);
        }
        return price;
    }

    /** Takes from the store that has the cheapest further units as many of them as the pools can take, and so on. */
    private int[] cheapestFirst(int[] need, int units) {
        StoreFlow flow = new StoreFlow(accepts, need);
        int[] shares = new int[stores.size()];
        boolean[] isFull = new boolean[stores.size()];
        for (int left = units; left > 0;) {
            Further best = null;
            for (int store = 0; store < shares.length; store++) {
                Further some = isFull[store] ? null : further(store, shares[store], left);
                best = some != null && (best == null || some.each < best.each) ? some : best;
            }
            if (best == null) {
                return null;
            }
            int pushed = flow.push(best.store, best.units);
            isFull[best.store] = pushed < best.units || best.units == 0;
            shares[best.store] += pushed;
            left -= pushed;
        }
        while (exchange(need, shares)) {
            // Until nothing is gained.
        }
        return sum(shares) >= CheapestDraw.IMPOSSIBLE ? null : shares;
    }

    /** Has one store give so many fewer units and another so many more where that is cheapest; whether it is cheaper than before. */
    private boolean exchange(int[] need, int[] shares) {
        long most = 0;
        int[] best = null;
        for (int fewer = 0; fewer < shares.length; fewer++) {
            for (int more = 0; more < shares.length; more++) {
                long before = stores.get(fewer).prices[shares[fewer]] + stores.get(more).prices[shares[more]];
                int units = Math.min(shares[fewer], stores.get(more).prices.length - 1 - shares[more]);
                for (; units > 0 && more != fewer; units--) {
                    long gain = before - stores.get(fewer).prices[shares[fewer] - units] - stores.get(more).prices[shares[more] + units];
                    if (gain > most) {
                        int[] changed = shares.clone();
                        changed[fewer] -= units;
                        changed[more] += units;
                        if (suffices(changed, need)) {
                            most = gain;
                            best = changed;
                        }
                    }
                }
            }
        }
        if (best != null) {
            System.arraycopy(best, 0, shares, 0, best.length);
        }
        return best != null;
    }

    private boolean suffices(int[] shares, int[] need) {
        StoreFlow flow = new StoreFlow(accepts, need);
        return IntStream.range(0, shares.length).allMatch(store -> flow.push(store, shares[store]) == shares[store]);
    }

    /** @param each what one of these units costs */
    private record Further(int store, int units, double each) {
    }

    /** The further units of a store that are cheapest by the unit; as many as there are where it sells none of these numbers. */
    private Further further(int store, int share, int left) {
        long[] prices = stores.get(store).prices;
        int most = Math.min(left, prices.length - 1 - share);
        Further best = new Further(store, most, Double.MAX_VALUE);
        for (int units = 1; units <= most; units++) {
            double each = (double) (prices[share + units] - prices[share]) / units;
            best = prices[share + units] < CheapestDraw.IMPOSSIBLE && each <= best.each ? new Further(store, units, each) : best;
        }
        return best;
    }

    /** The cheapest of all choices of what each store gives; {@code best} is null where there is none. */
    private final class Choice {
        private final int[] need;
        private final int[] shares = new int[stores.size()];
        private int[] best;
        private long least = CheapestDraw.IMPOSSIBLE;

        Choice(int[] need) {
            this.need = need;
        }

        private void from(int store, int units, long price) {
            if (price >= least) {
                return;
            }
            if (store == shares.length) {
                if (units == 0 && suffices(shares, need)) {
                    least = price;
                    best = shares.clone();
                }
                return;
            }
            long[] prices = stores.get(store).prices;
            int most = Math.min(units, prices.length - 1);
            for (int given = store == shares.length - 1 ? units : 0; given <= most; given++) {
                if (prices[given] < CheapestDraw.IMPOSSIBLE) {
                    shares[store] = given;
                    from(store + 1, units - given, price + prices[given]);
                }
            }
        }
    }
}
