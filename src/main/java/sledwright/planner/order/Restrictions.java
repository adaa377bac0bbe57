package sledwright.planner.order;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;

/**
 * What a branch of the search for the best order takes for settled.
 *
 * @param enclosures of each kind of enclosure, how many there are
 * @param drawn      of each lot, how many units it gives
 * @param traits     how many machines of a line have something in common
 * @param suppliers  whether a supplier delivers, where that is settled
 */
record Restrictions(Map<Bay, Range> enclosures, Map<Source, Range> drawn, Map<Trait, Range> traits, Map<Integer, Boolean> suppliers) {

    static final Restrictions NONE = new Restrictions(Map.of(), Map.of(), Map.of(), Map.of());

    /** Whole numbers from one to another. */
    record Range(int least, int most) {

        static final Range ANY = new Range(0, Integer.MAX_VALUE / 4);

        Range upTo(int bound) {
            return new Range(least, Math.min(most, bound));
        }

        Range from(int bound) {
            return new Range(Math.max(least, bound), most);
        }

        boolean contains(double value) {
            return least <= value && value <= most;
        }

        boolean isEmpty() {
            return least > most;
        }
    }

    /** Whether some number would have to be more than it may be. */
    boolean isContradictory() {
        return Stream.of(enclosures, drawn, traits).flatMap(ranges -> ranges.values().stream()).anyMatch(Range::isEmpty);
    }

    Range of(Bay bay) {
        return enclosures.getOrDefault(bay, Range.ANY);
    }

    Range of(Source source) {
        return drawn.getOrDefault(source, Range.ANY).upTo(source.most());
    }

    Range of(Trait trait) {
        return traits.getOrDefault(trait, Range.ANY);
    }

    boolean isClosed(Source source) {
        return source.supplier() >= 0 && !suppliers.getOrDefault(source.supplier(), true);
    }

    /** Whether a supplier delivers in any case: that is settled, or one of its lots has to give something. */
    boolean mustDeliver(int supplier) {
        return suppliers.getOrDefault(supplier, false)
                || drawn.entrySet().stream().anyMatch(lot -> lot.getKey().supplier() == supplier && lot.getValue().least() > 0);
    }

    Restrictions with(Bay bay, Range range) {
        return new Restrictions(and(enclosures, bay, range), drawn, traits, suppliers);
    }

    Restrictions with(Source source, Range range) {
        return new Restrictions(enclosures, and(drawn, source, range), traits, suppliers);
    }

    Restrictions with(Trait trait, Range range) {
        return new Restrictions(enclosures, drawn, and(traits, trait, range), suppliers);
    }

    Restrictions with(int supplier, boolean delivers) {
        return new Restrictions(enclosures, drawn, traits, and(suppliers, supplier, delivers));
    }

    private static <K, V> Map<K, V> and(Map<K, V> map, K key, V value) {
        Map<K, V> more = new LinkedHashMap<>(map);
        more.put(key, value);
        return more;
    }
}
