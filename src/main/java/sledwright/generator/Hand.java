package sledwright.generator;

import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;

/** Compares draws of unequal watts without dealing them. */
final class Hand {

    private Hand() {
    }

    /** Whether {@code one} has, of every kind, as many units as {@code other} and never more of the heavier ones. */
    static boolean isLighterOrEqual(Draw one, Draw other) {
        Map<String, NavigableMap<Long, Integer>> first = byKind(one);
        Map<String, NavigableMap<Long, Integer>> second = byKind(other);
        return first.keySet().equals(second.keySet())
                && first.keySet().stream().allMatch(kind -> isLighterOrEqual(first.get(kind), second.get(kind)));
    }

    private static boolean isLighterOrEqual(NavigableMap<Long, Integer> one, NavigableMap<Long, Integer> other) {
        TreeMap<Long, Integer> weights = new TreeMap<>(one);
        weights.putAll(other);
        int ahead = 0;
        for (Long weight : weights.descendingKeySet()) {
            ahead += other.getOrDefault(weight, 0) - one.getOrDefault(weight, 0);
            if (ahead < 0) {
                return false;
            }
        }
        return ahead == 0;
    }

    /** Kind, and part numbers that every machine must get, apart: those are not free to move. */
    private static Map<String, NavigableMap<Long, Integer>> byKind(Draw draw) {
        Map<String, NavigableMap<Long, Integer>> units = new TreeMap<>();
        draw.shares().forEach(share -> units
                .computeIfAbsent(share.alike() + (share.everywhere() ? " " + share.modules().get(0).sku() : ""), kind -> new TreeMap<>())
                .merge(share.microwatts(), share.units(), Integer::sum));
        return units;
    }
}
