package sledwright.planner.order.market;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;

/**
 * Units of stores on their way to the pools that need them, as many as can be: a pool that has all it needs takes from one store and gives
 * another store's units up to a pool that accepts these (augmenting paths, Ford and Fulkerson 1956).
 */
final class StoreFlow {

    private static final int NONE = -1;

    private final List<boolean[]> accepts;
    private final int[] left;
    private final int[][] given;

    /**
     * @param accepts for each store the pools that take its units
     * @param need    units for each pool
     */
    StoreFlow(List<boolean[]> accepts, int[] need) {
        this.accepts = accepts;
        left = need.clone();
        given = new int[accepts.size()][need.length];
    }

    /** Units that a store gives each pool. */
    int[] given(int store) {
        return given[store];
    }

    /** Takes more units of a store, as far as they are needed; how many these are. Other stores give as many as before, to other pools. */
    int push(int store, int units) {
        int pushed = 0;
        int some;
        do {
            some = augment(store, units - pushed);
            pushed += some;
        } while (some > 0 && pushed < units);
        return pushed;
    }

    private int augment(int from, int units) {
        int[] storeOf = new int[left.length];
        int[] poolOf = new int[given.length];
        Arrays.fill(storeOf, NONE);
        Arrays.fill(poolOf, NONE);
        Deque<Integer> stores = new ArrayDeque<>(List.of(from));
        while (units > 0 && !stores.isEmpty()) {
            int store = stores.poll();
            for (int pool = 0; pool < left.length; pool++) {
                if (accepts.get(store)[pool] && storeOf[pool] == NONE) {
                    storeOf[pool] = store;
                    if (left[pool] > 0) {
                        return along(from, pool, units, storeOf, poolOf);
                    }
                    for (int other = 0; other < given.length; other++) {
                        if (other != from && poolOf[other] == NONE && given[other][pool] > 0) {
                            poolOf[other] = pool;
                            stores.add(other);
                        }
                    }
                }
            }
        }
        return 0;
    }

    /** @param poolOf of a store on the path the pool that it leaves to the store before it */
    private int along(int from, int to, int units, int[] storeOf, int[] poolOf) {
        int most = Math.min(units, left[to]);
        for (int store = storeOf[to]; store != from; store = storeOf[poolOf[store]]) {
            most = Math.min(most, given[store][poolOf[store]]);
        }
        left[to] -= most;
        int pool = to;
        for (int store = storeOf[to]; store != from; store = storeOf[pool]) {
            given[store][pool] += most;
            pool = poolOf[store];
            given[store][pool] -= most;
        }
        given[from][pool] += most;
        return most;
    }
}
