package sledwright.planner.order.relax;

import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import sledwright.planner.order.market.Bay;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.OfferedLot;

/**
 * What units are worth to an order, scaled: the dual values of its master, or any others.
 *
 * @param part by pool and part
 * @param bay  of a place in each kind of enclosure
 * @param kilowatt of 1000 W in each kind of enclosure: a watt is worth so little that rounding would count
 * @param trait what a machine is worth beyond that for something that it has in common with others of its line; a place also for a line by
 *              itself, of whose machines an enclosure takes no more than there are
 * @param missing of a machine of priority 1 that is not delivered
 * @param cut   what a cut has columns pay for what they count, and gives for each unit of its further lots
 */
public record Duals(long[][] part, long[] bay, long[] kilowatt, Map<Trait, Long> trait, long missing, Map<StockCut, Long> cut) {

    public Duals(long[][] part, long[] bay, long[] kilowatt, Map<Trait, Long> trait, long missing) {
        this(part, bay, kilowatt, trait, missing, Map.of());
    }

    /** Part of the way from these to others. */
    Duals towards(Duals other, double share) {
        long[][] mixed = new long[part.length][];
        Arrays.setAll(mixed, pool -> mix(part[pool], other.part[pool], share));
        return new Duals(mixed, mix(bay, other.bay, share), mix(kilowatt, other.kilowatt, share), mix(trait, other.trait, share),
                mix(missing, other.missing, share), mix(cut, other.cut, share));
    }

    private static <K> Map<K, Long> mix(Map<K, Long> one, Map<K, Long> other, double share) {
        Set<K> keys = new LinkedHashSet<>(one.keySet());
        keys.addAll(other.keySet());
        Map<K, Long> mixed = new LinkedHashMap<>();
        keys.forEach(key -> mixed.put(key, mix(one.getOrDefault(key, 0L), other.getOrDefault(key, 0L), share)));
        return mixed;
    }

    private static long[] mix(long[] one, long[] other, double share) {
        long[] mixed = new long[one.length];
        Arrays.setAll(mixed, i -> mix(one[i], other[i], share));
        return mixed;
    }

    private static long mix(long one, long other, double share) {
        return one + Math.round(share * (other - one));
    }

    /** What units of a part in one machine of a line take. */
    long of(int line, int pool, int of, int units) {
        long sum = part[pool][of] * units;
        for (Map.Entry<Trait, Long> some : trait.entrySet()) {
            if (some.getKey() instanceof Trait.Takes takes && takes.line() == line && takes.part() == of && units >= takes.least()) {
                sum += some.getValue();
            }
        }
        return sum + counted(line, of, units);
    }

    /** What cuts have units of a part in one column pay. */
    private long counted(int line, int of, int units) {
        long sum = 0;
        for (Map.Entry<StockCut, Long> some : cut.entrySet()) {
            sum += some.getKey().counts(line, of) ? some.getValue() * some.getKey().of(units) : 0;
        }
        return sum;
    }

    /** What cuts give for a unit of a lot. */
    long given(OfferedLot lot) {
        long sum = 0;
        for (Map.Entry<StockCut, Long> some : cut.entrySet()) {
            sum += some.getKey().part() == lot.part() && some.getKey().beyond().contains(lot) ? some.getValue() : 0;
        }
        return sum;
    }

    /** What cuts give for a unit of a part at most. */
    long given(int of) {
        return cut.entrySet().stream().filter(some -> some.getKey().part() == of && !some.getKey().beyond().isEmpty())
                .mapToLong(Map.Entry::getValue).sum();
    }

    /** Part -> numbers of its units in a machine of a line from which on it is worth more or less. */
    Map<Integer, SortedSet<Integer>> steps(int line) {
        Map<Integer, SortedSet<Integer>> steps = new HashMap<>();
        for (Trait some : trait.keySet()) {
            if (some instanceof Trait.Takes takes && takes.line() == line) {
                steps.computeIfAbsent(takes.part(), part -> new TreeSet<>()).add(takes.least());
            }
        }
        for (StockCut some : cut.keySet()) {
            if (some.counts(line, some.part())) {
                steps.computeIfAbsent(some.part(), part -> new TreeSet<>()).add(some.first());
            }
        }
        return steps;
    }

    /** A place in an enclosure for a machine of a line. */
    long place(int line, Bay some) {
        return bay[some.id()] + trait.getOrDefault(new Trait.Stands(line, some), 0L);
    }

    /** What a column takes, at these prices and with what it costs beside. */
    long of(Column column, int pool) {
        long sum = column.own();
        int[] parts = column.parts();
        int[] units = column.units();
        for (int i = 0; i < parts.length; i++) {
            sum += part[pool][parts[i]] * units[i] + (cut.isEmpty() ? 0 : counted(column.line(), parts[i], units[i]));
        }
        for (Map.Entry<Trait, Long> some : trait.entrySet()) {
            // Machines of one build count as one, but for their places.
            int times = !some.getKey().isOf(column) ? 0 : some.getKey() instanceof Trait.Stands ? column.machines() : 1;
            sum += times * some.getValue();
        }
        if (column.bay() != null) {
            int id = column.bay().id();
            sum += bay[id] * column.machines() + Math.round(kilowatt[id] * (column.load() / Bay.MICRO_OF_KILO));
        }
        return sum;
    }
}
