package sledwright.planner.order.fill;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import sledwright.planner.order.market.Bay;

/** Sleds put into enclosures of one kind: heaviest first, each into the fullest that still carries it. */
public final class Packing {

    private Packing() {
    }

    /** For each enclosure the indexes of its sleds; null where one of them is too heavy for any. */
    public static List<List<Integer>> pack(long[] loads, Bay bay) {
        List<List<Integer>> enclosures = new ArrayList<>();
        List<Long> carried = new ArrayList<>();
        List<Integer> heaviestFirst = IntStream.range(0, loads.length).boxed()
                .sorted(Comparator.comparingLong((Integer sled) -> loads[sled]).reversed()).toList();
        long lightest = Arrays.stream(loads).min().orElse(0);
        // Those that may still take a sled; among very many sleds nearly all enclosures are full.
        List<Integer> open = new ArrayList<>();
        for (int sled : heaviestFirst) {
            if (loads[sled] > bay.capacity()) {
                return null;
            }
            int best = -1;
            for (int some : open) {
                if (carried.get(some) + loads[sled] <= bay.capacity() && (best < 0 || carried.get(some) > carried.get(best))) {
                    best = some;
                }
            }
            if (best < 0) {
                best = enclosures.size();
                enclosures.add(new ArrayList<>());
                carried.add(0L);
                open.add(best);
            }
            enclosures.get(best).add(sled);
            carried.set(best, carried.get(best) + loads[sled]);
            if (enclosures.get(best).size() == bay.bays() || carried.get(best) + lightest > bay.capacity()) {
                open.remove(Integer.valueOf(best));
            }
        }
        return enclosures;
    }
}
