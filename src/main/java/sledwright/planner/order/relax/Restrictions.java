package sledwright.planner.order.relax;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sledwright.planner.order.market.Bay;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.OfferedLot;
import sledwright.planner.order.market.Range;

/**
 * What a branch of the search for the best order takes for settled.
 *
 * @param enclosures of each kind of enclosure, how many there are
 * @param drawn      of each lot, how many units it gives
 * @param traits     how many machines of a line have something in common
 * @param suppliers  whether a supplier delivers, where that is settled
 * @param missing    how many machines are not delivered, each counted by its line's priority
 * @param barred     of each line, parts that none of its machines takes
 */
public record Restrictions(Map<Bay, Range> enclosures, Map<OfferedLot, Range> drawn, Map<Trait, Range> traits, Map<Integer,
        Boolean> suppliers, Range missing, Map<Integer, Set<Integer>> barred) {

    public static final Restrictions NONE = new Restrictions(Map.of(), Map.of(), Map.of(), Map.of(), Range.ANY, Map.of());

    /** Whether some number would have to be more than it may be. */
    public boolean isContradictory() {
        return missing.isEmpty() || Stream.of(enclosures, drawn, traits).flatMap(ranges -> ranges.values().stream())
                .anyMatch(Range::isEmpty)
                || drawn.keySet().stream().anyMatch(lot -> isClosed(lot) && of(lot).least() > 0 || !lot.sells(of(lot)));
    }

    /** How many suppliers deliver in any case. */
    int mustDeliver() {
        return (int) Stream.concat(suppliers.entrySet().stream().filter(Map.Entry::getValue).map(Map.Entry::getKey),
                drawn.entrySet().stream().filter(lot -> lot.getValue().least() > 0).map(lot -> lot.getKey().supplier())
                        .filter(supplier -> supplier >= 0)).distinct().count();
    }

    Range of(Bay bay) {
        return enclosures.getOrDefault(bay, Range.ANY);
    }

    Range of(OfferedLot source) {
        return drawn.getOrDefault(source, Range.ANY).upTo(source.most());
    }

    Range of(Trait trait) {
        return traits.getOrDefault(trait, Range.ANY);
    }

    boolean isClosed(OfferedLot source) {
        return source.supplier() >= 0 && !suppliers.getOrDefault(source.supplier(), true);
    }

    /** Whether a supplier delivers in any case: that is settled, or one of its lots has to give something. */
    boolean mustDeliver(int supplier) {
        return suppliers.getOrDefault(supplier, false)
                || drawn.entrySet().stream().anyMatch(lot -> lot.getKey().supplier() == supplier && lot.getValue().least() > 0);
    }

    Restrictions with(Bay bay, Range range) {
        return new Restrictions(and(enclosures, bay, range), drawn, traits, suppliers, missing, barred);
    }

    Restrictions with(OfferedLot source, Range range) {
        return new Restrictions(enclosures, and(drawn, source, range), traits, suppliers, missing, barred);
    }

    Restrictions with(Trait trait, Range range) {
        return new Restrictions(enclosures, drawn, and(traits, trait, range), suppliers, missing, barred);
    }

    public Restrictions with(int supplier, boolean delivers) {
        return new Restrictions(enclosures, drawn, traits, and(suppliers, supplier, delivers), missing, barred);
    }

    public Restrictions withMissing(Range range) {
        return new Restrictions(enclosures, drawn, traits, suppliers, range, barred);
    }

    /** Where machines of a line take none of some parts, either. */
    public Restrictions withBarred(int line, Set<Integer> parts) {
        Set<Integer> all = new HashSet<>(barred(line));
        all.addAll(parts);
        return new Restrictions(enclosures, drawn, traits, suppliers, missing, and(barred, line, Set.copyOf(all)));
    }

    /** Units that the lots of a part may give a pool's lines. */
    public int available(Market market, int part, int pool) {
        return (int) Math.min(Integer.MAX_VALUE / 4, market.sources(part).stream().filter(lot -> lot.pools()[pool] && !isClosed(lot))
                .mapToLong(lot -> of(lot).most()).sum());
    }

    /** Units of parts that a column of a line takes at most, where that is fewer than there are and than it could take. */
    Map<Integer, Integer> most(Market market, int line) {
        Map<Integer, Integer> most = new HashMap<>();
        int pool = market.poolOf(line);
        int machines = market.line(line).isTogether() ? market.line(line).machines() : 1;
        for (int part : held(market)) {
            int available = available(market, part, pool);
            if (available < market.available(part, pool) && available < (long) market.mostInMachine(part) * machines) {
                most.put(part, available);
            }
        }
        barred(line).forEach(part -> most.put(part, 0));
        return most;
    }

    /** The parts of which orders may draw less, or more, than there is. */
    private int[] held(Market market) {
        return suppliers.isEmpty() ? drawn.keySet().stream().mapToInt(OfferedLot::part).distinct().toArray()
                : IntStream.range(0, market.parts()).toArray();
    }

    private Set<Integer> barred(int line) {
        return barred.getOrDefault(line, Set.of());
    }

    private static <K, V> Map<K, V> and(Map<K, V> map, K key, V value) {
        Map<K, V> more = new LinkedHashMap<>(map);
        more.put(key, value);
        return more;
    }
}
