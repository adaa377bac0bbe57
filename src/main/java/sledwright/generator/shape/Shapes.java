package sledwright.generator.shape;

import java.util.Comparator;
import java.util.List;

/**
 * Every population of one socket that can matter, free of prices: how many modules of each group, and the figures that
 * follow. Of the ways to spread the same modules over the channels only the best figures are kept.
 *
 * @param buckets populations with equal figures, together; those that leave most to use first, and of these the widest
 * @param widths  how many distinct widths they have
 */
public record Shapes(ShapeKey key, Layouts layouts, List<Bucket> buckets, int widths) {

    /**
     * What populations of a socket reach, in the order of what is left to use, the most first, then of width, the widest first. Under
     * mirroring all figures are of one half.
     *
     * @param totalGb   capacity
     * @param fullestGb capacity of the fullest channel
     * @param sparedGb  what rank sparing holds back
     */
    public record Figures(int totalGb, int fullestGb, double sparedGb, int modules) implements Comparable<Figures> {

        private static final Comparator<Figures> ORDER = Comparator.comparingDouble((Figures figures) -> figures.sparedGb - figures.totalGb)
                .thenComparingDouble(figures -> -figures.width()).thenComparingInt(Figures::modules);

        /** Capacity in units of the fullest channel: as many channels' worth of bandwidth does the socket give. */
        public double width() {
            return (double) totalGb / fullestGb;
        }

        @Override
        public int compareTo(Figures other) {
            return ORDER.compare(this, other);
        }
    }

    /**
     * Populations that are worth the same.
     *
     * @param widthRank place of the width among all, 1 for the widest
     */
    public record Bucket(Figures figures, int widthRank, List<Shape> shapes) {
    }

    /**
     * Counts of modules by group.
     *
     * @param groups positions in the key's list
     * @param counts of each of them
     */
    public record Shape(int[] groups, int[] counts) {

        private static final long BYTES = 48;

        /** About how many bytes it takes; shapes of the same groups share their list. */
        public long bytes() {
            return BYTES + 4L * counts.length;
        }
    }

    private static final long BYTES_OF_BUCKET = 150;

    /** About how many bytes they take. */
    long bytes() {
        return layouts.bytes() + buckets.stream()
                .mapToLong(bucket -> BYTES_OF_BUCKET + bucket.shapes.stream().mapToLong(Shape::bytes).sum()).sum();
    }
}
