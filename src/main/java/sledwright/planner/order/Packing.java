package sledwright.planner.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Sleds put into enclosures of one kind: heaviest first, each into the fullest that still carries it. */
final class Packing {

    private Packing() {
    }

    /** For each enclosure the indexes of its sleds; null where one of them is too heavy for any. */
    static List<List<Integer>> pack(long[] loads, Bay bay) {
        List<List<Integer>> enclosures = new ArrayList<>();
        List<Long> carried = new ArrayList<>();
        List<Integer> heaviestFirst = IntStream.range(0, loads.length).boxed()
                .sorted(Comparator.comparingLong((Integer sled) -> loads[sled]).reversed()).toList();
        for (int sled : heaviestFirst) {
            if (loads[sled] > bay.capacity()) {
                return null;
            }
            int best = -1;
            for (int i = 0; i < enclosures.size(); i++) {
                if (enclosures.get(i).size() < bay.bays() && carried.get(i) + loads[sled] <= bay.capacity()
                        && (best < 0 || carried.get(i) > carried.get(best))) {
                    best = i;
                }
            }
            if (best < 0) {
                best = enclosures.size();
                enclosures.add(new ArrayList<>());
                carried.add(0L);
            }
            enclosures.get(best).add(sled);
            carried.set(best, carried.get(best) + loads[sled]);
        }
        return enclosures;
    }
}
