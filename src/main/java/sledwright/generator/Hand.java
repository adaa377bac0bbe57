package sledwright.generator;

import java.util.HashMap;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;

/** Compares draws of unequal watts without dealing them. */
final class Hand {

    private Hand() {
    }

    /** Whether {@code one} has, of every kind, as many units as {@code other} and never more of the heavier ones. */
    static boolean isLighterOrEqual(Draw one, Draw other) {
        Map<Fixed, NavigableMap<Long, Integer>> first = byKind(one);
        Map<Fixed, NavigableMap<Long, Integer>> second = byKind(other);
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

    /** Units of one kind; a part number that every machine must get stands apart, since it is not free to move. */
    private record Fixed(Draw.Alike alike, String sku) {
    }

    private static Map<Fixed, NavigableMap<Long, Integer>> byKind(Draw draw) {
        Map<Fixed, NavigableMap<Long, Integer>> units = new HashMap<>();
        draw.shares().forEach(share -> units
                .computeIfAbsent(new Fixed(share.alike(), share.everywhere() ? share.modules().get(0).sku() : ""), fixed -> new TreeMap<>())
                .merge(share.microwatts(), share.units(), Integer::sum));
        return units;
    }
}
