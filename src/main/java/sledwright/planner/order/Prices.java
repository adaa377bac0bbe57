package sledwright.planner.order;

/**
 * What units are worth to an order, scaled: the dual values of its master, or any others.
 *
 * @param part by pool and part
 * @param bay  of a place in each kind of enclosure
 * @param watt of a watt in each kind of enclosure
 */
record Prices(long[][] part, long[] bay, long[] watt) {

    /** Part of the way from these to others. */
    Prices towards(Prices other, double share) {
        long[][] mixed = new long[part.length][];
        for (int pool = 0; pool < part.length; pool++) {
            mixed[pool] = mix(part[pool], other.part[pool], share);
        }
        return new Prices(mixed, mix(bay, other.bay, share), mix(watt, other.watt, share));
    }

    private static long[] mix(long[] one, long[] other, double share) {
        long[] mixed = new long[one.length];
        for (int i = 0; i < mixed.length; i++) {
            mixed[i] = one[i] + Math.round(share * (other[i] - one[i]));
        }
        return mixed;
    }

    /** What a column takes, at these prices and with what it costs beside. */
    long of(Column column, int pool) {
        long sum = column.own();
        int[] parts = column.parts();
        int[] units = column.units();
        for (int i = 0; i < parts.length; i++) {
            sum += part[pool][parts[i]] * units[i];
        }
        if (column.bay() != null) {
            int id = column.bay().id();
            sum += bay[id] * column.machines() + Math.round(watt[id] * (column.load() / (double) Bay.MICRO));
        }
        return sum;
    }
}
