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
 * @param use  what a part in a line is worth beyond that, where the line is to use more or less of it
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

    /** A unit of a part in a line. */
    long of(int line, int pool, int of) {
        return part[pool][of] + (use.isEmpty() ? 0 : use.getOrDefault(new Use(line, of), 0L));
    }

    /** What a column takes, at these prices and with what it costs beside. */
    long of(Column column, int pool) {
        long sum = column.own();
        int[] parts = column.parts();
        int[] units = column.units();
        for (int i = 0; i < parts.length; i++) {
            sum += of(column.line(), pool, parts[i]) * units[i];
        }
        if (column.bay() != null) {
            int id = column.bay().id();
            sum += bay[id] * column.machines() + Math.round(watt[id] * (column.load() / (double) Bay.MICRO));
        }
        return sum;
    }
}
