package sledwright.planner.order.market;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sledwright.domain.Lot;
import sledwright.domain.Pick;
import sledwright.metrics.CheapestDraw;

/**
 * What units of a part cost that several pools need at once, exactly. Lots that the same pools accept are one {@link Store}, so all that
 * has to be chosen is how many units each store gives. By Hall's theorem they can be handed out when, for every set of stores, these give
 * at least what the pools need that accept no other.
 */
final class SharedDraw {

    /** Beyond this many ways to share units between stores they are not all tried. */
    private static final long MOST_WAYS = 50_000;

    private final List<Store> stores;

    /** Lots that the same pools accept, and what units of them cost. */
    private record Store(boolean[] pools, List<Lot> lots, long[] prices) {
    }

    /** @param sources the open lots of one part */
    SharedDraw(List<OfferedLot> sources) {
        Map<List<Boolean>, List<OfferedLot>> byPools = new LinkedHashMap<>();
        sources.forEach(source -> byPools.computeIfAbsent(accepted(source), pools -> new ArrayList<>()).add(source));
        stores = new ArrayList<>();
        byPools.values().forEach(some -> {
            List<Lot> lots = some.stream().map(OfferedLot::lot).toList();
            stores.add(new Store(some.get(0).pools(), lots, CheapestDraw.prices(lots, some.stream().mapToInt(OfferedLot::most).sum())));
        });
        // The last gives what the others leave, so that it is not counted through.
        stores.sort(Comparator.comparingInt(store -> store.prices.length));
    }

    private static List<Boolean> accepted(OfferedLot source) {
        List<Boolean> accepted = new ArrayList<>();
        for (boolean pool : source.pools()) {
            accepted.add(pool);
        }
        return accepted;
    }

    /** Whether there are so few ways to share the units that the best of them is found. */
    boolean isExact(int[] need) {
        int units = Arrays.stream(need).sum();
        // Every set of stores is looked at for every way.
        long ways = 1L << stores.size();
        for (int store = 0; store < stores.size() - 1 && ways <= MOST_WAYS; store++) {
            ways *= Math.min(units + 1, stores.get(store).prices.length);
        }
        return ways <= MOST_WAYS;
    }

    /** The least price of what each pool needs, minor units; {@link CheapestDraw#IMPOSSIBLE} where the lots cannot give it. */
    long price(int[] need) {
        return choice(need).least;
    }

    /** The picks of each pool; null where the lots cannot give what is needed. A pick's own price is not that of the order. */
    Map<Integer, List<Pick>> picks(int[] need) {
        int[] shares = choice(need).best;
        if (shares == null) {
            return null;
        }
        int[] left = need.clone();
        Map<Integer, List<Pick>> picks = new LinkedHashMap<>();
        for (int store = 0; store < shares.length; store++) {
            List<Pick> taken = new ArrayList<>(CheapestDraw.picks(stores.get(store).lots, shares[store]));
            for (int pool = 0; pool < need.length; pool++) {
                int given = given(shares, left, store, pool);
                left[pool] -= given;
                shares[store] -= given;
                while (given > 0) {
                    Pick first = taken.remove(0);
                    int some = Math.min(given, first.quantity());
                    picks.computeIfAbsent(pool, key -> new ArrayList<>()).add(new Pick(first.lot(), some));
                    if (some < first.quantity()) {
                        taken.add(0, new Pick(first.lot(), first.quantity() - some));
                    }
                    given -= some;
                }
            }
        }
        return picks;
    }

    /** As many units of a store for a pool as leave enough for the others. */
    private int given(int[] shares, int[] left, int store, int pool) {
        int given = stores.get(store).pools[pool] ? Math.min(shares[store], left[pool]) : 0;
        for (; given > 0; given--) {
            shares[store] -= given;
            left[pool] -= given;
            boolean suffices = suffices(shares, left);
            shares[store] += given;
            left[pool] += given;
            if (suffices) {
                return given;
            }
        }
        return 0;
    }

    private Choice choice(int[] need) {
        Choice choice = new Choice(need);
        choice.from(0, Arrays.stream(need).sum(), 0);
        return choice;
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

    private boolean suffices(int[] shares, int[] need) {
        int[] accepts = new int[need.length];
        for (int pool = 0; pool < need.length; pool++) {
            for (int store = 0; store < shares.length && need[pool] > 0; store++) {
                accepts[pool] |= stores.get(store).pools[pool] ? 1 << store : 0;
            }
        }
        for (int set = 0; set < 1 << shares.length; set++) {
            int left = 0;
            for (int store = 0; store < shares.length; store++) {
                left += (set >> store & 1) == 1 ? shares[store] : 0;
            }
            for (int pool = 0; pool < need.length; pool++) {
                left -= (accepts[pool] & ~set) == 0 ? need[pool] : 0;
            }
            if (left < 0) {
                return false;
            }
        }
        return true;
    }
}
