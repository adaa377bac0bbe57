package sledwright.generator.shape;

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
     * Populations that are worth the same. Under mirroring all figures are of one half.
     *
     * @param totalGb   capacity
     * @param fullestGb capacity of the fullest channel
     * @param sparedGb  what rank sparing holds back
     * @param widthRank place of the width among all, 1 for the widest
     */
    public record Bucket(int totalGb, int fullestGb, double sparedGb, int modules, int widthRank, List<Shape> shapes) {

        /** Capacity in units of the fullest channel: as many channels' worth of bandwidth does the socket give. */
        double width() {
            return (double) totalGb / fullestGb;
        }
    }

    /**
     * Counts of modules by group.
     *
     * @param groups positions in the key's list
     * @param counts of each of them
     */
    public record Shape(int[] groups, int[] counts) {
    }
}
