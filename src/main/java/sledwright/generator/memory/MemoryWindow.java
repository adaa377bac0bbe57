package sledwright.generator.memory;

/**
 * The part of an option's points that is worth pricing. Whatever makes a point superfluous costs and weighs no more, is as wide and leaves
 * as much to use, so it lies in every window that the point lies in: the points of a window are those of all points that lie in it.
 *
 * @param leastUsableGb the least usable memory of a machine
 * @param leastWidth    the least width, in fullest channels
 * @param mostPrice     the highest price, all machines, minor units
 * @param mostValue     the most of price less worth, minor units
 * @param worthOfGb     what a GB of usable memory is worth in that
 * @param worthOfWidth  what a channel of width is worth in that
 * @param mostMicrowatts the most load of the heaviest machine, as far as that is known
 */
public record MemoryWindow(double leastUsableGb, double leastWidth, double mostPrice, double mostValue, double worthOfGb,
        double worthOfWidth, double mostMicrowatts) {

    private static final double ANY = Double.POSITIVE_INFINITY;

    /** Every point. */
    public static final MemoryWindow ALL = new MemoryWindow(0, 0, ANY, ANY, 0, 0, ANY);

    /** Grid points of a limit between a power of two and the next. */
    private static final int FINENESS = 16;

    /** What of the window is no dearer. */
    public MemoryWindow noDearer(double price) {
        return new MemoryWindow(leastUsableGb, leastWidth, Math.min(mostPrice, price), mostValue, worthOfGb, worthOfWidth, mostMicrowatts);
    }

    /** What of the window is at least as wide. */
    public MemoryWindow noNarrower(double width) {
        return new MemoryWindow(leastUsableGb, Math.max(leastWidth, width), mostPrice, mostValue, worthOfGb, worthOfWidth, mostMicrowatts);
    }

    /** What of the window leaves at least as much to use. */
    public MemoryWindow noSmaller(double usableGb) {
        return new MemoryWindow(Math.max(leastUsableGb, usableGb), leastWidth, mostPrice, mostValue, worthOfGb, worthOfWidth,
                mostMicrowatts);
    }

    /** What of the window comes to no more; the same worth is meant wherever a window is asked for it. */
    public MemoryWindow noMoreOf(double value, double gb, double width) {
        return new MemoryWindow(leastUsableGb, leastWidth, mostPrice, Math.min(mostValue, value), gb, width, mostMicrowatts);
    }

    /** What of the window loads no machine with more, for all that is known before units are dealt. */
    public MemoryWindow noHeavier(double microwatts) {
        return new MemoryWindow(leastUsableGb, leastWidth, mostPrice, mostValue, worthOfGb, worthOfWidth,
                Math.min(mostMicrowatts, microwatts));
    }

    /** Whether everything that lies in another window lies in this one. */
    public boolean holds(MemoryWindow other) {
        return leastUsableGb <= other.leastUsableGb && leastWidth <= other.leastWidth && mostPrice >= other.mostPrice
                && mostMicrowatts >= other.mostMicrowatts
                && (mostValue == ANY || mostValue >= other.mostValue && worthOfGb == other.worthOfGb && worthOfWidth == other.worthOfWidth);
    }

    /** A window that holds this one and many that ask for hardly more. */
    MemoryWindow widened() {
        return new MemoryWindow(leastUsableGb, leastWidth, up(mostPrice), up(mostValue), worthOfGb, worthOfWidth, up(mostMicrowatts));
    }

    private static double up(double limit) {
        if (Double.isInfinite(limit)) {
            return limit;
        }
        double step = Math.max(Math.scalb(1.0, Math.getExponent(limit)) / FINENESS, 1);
        return Math.ceil(limit / step) * step;
    }

    /** The most that a population may cost which has so much to use and is so wide; below anything where none is wanted. */
    double mostPrice(double usableGb, double width) {
        return usableGb < leastUsableGb || width < leastWidth ? Double.NEGATIVE_INFINITY
                : Math.min(mostPrice, mostValue + worthOfGb * usableGb + worthOfWidth * width);
    }
}
