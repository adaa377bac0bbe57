package sledwright.planner.order;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import sledwright.planner.order.Restrictions.Use;

/**
 * What units are worth to an order, scaled: the dual values of its master, or any others.
 *
 * @param part by pool and part
 * @param bay  of a place in each kind of enclosure
 * @param watt of a watt in each kind of enclosure
 * @param use  what a machine is worth beyond that which takes so many units of a part
 */
record Prices(long[][] part, long[] bay, long[] watt, Map<Use, Long> use) {

    /** Part of the way from these to others. */
    Prices towards(Prices other, double share) {
        long[][] mixed = new long[part.length][];
        for (int pool = 0; pool < part.length; pool++) {
            mixed[pool] = mix(part[pool], other.part[pool], share);
        }
        Set<Use> uses = new HashSet<>(use.keySet());
        uses.addAll(other.use.keySet());
        Map<Use, Long> mixedUse = new HashMap<>();
        uses.forEach(some -> mixedUse.put(some, mix(use.getOrDefault(some, 0L), other.use.getOrDefault(some, 0L), share)));
        return new Prices(mixed, mix(bay, other.bay, share), mix(watt, other.watt, share), mixedUse);
    }

    private static long[] mix(long[] one, long[] other, double share) {
        long[] mixed = new long[one.length];
        for (int i = 0; i < mixed.length; i++) {
            mixed[i] = mix(one[i], other[i], share);
        }
        return mixed;
    }

    private static long mix(long one, long other, double share) {
        return one + Math.round(share * (other - one));
    }

    /** What units of a part in one machine of a line take. */
    long of(int line, int pool, int of, int units) {
        long sum = part[pool][of] * units;
        for (Map.Entry<Use, Long> some : use.entrySet()) {
            if (some.getKey().line() == line && some.getKey().part() == of && units >= some.getKey().least()) {
                sum += some.getValue();
            }
        }
        return sum;
    }

    /** Numbers of units of a part in a line from which on it is worth more or less, ascending. */
    int[] steps(int line, int of) {
        return use.keySet().stream().filter(some -> some.line() == line && some.part() == of).mapToInt(Use::least).sorted().toArray();
    }

    /** What a column takes, at these prices and with what it costs beside. */
    long of(Column column, int pool) {
        long sum = column.own();
        int[] parts = column.parts();
        int[] units = column.units();
        for (int i = 0; i < parts.length; i++) {
            sum += part[pool][parts[i]] * units[i];
        }
        for (Map.Entry<Use, Long> some : use.entrySet()) {
            sum += some.getKey().isOf(column) ? some.getValue() : 0;
        }
        if (column.bay() != null) {
            int id = column.bay().id();
            sum += bay[id] * column.machines() + Math.round(watt[id] * (column.load() / (double) Bay.MICRO));
        }
        return sum;
    }
}
