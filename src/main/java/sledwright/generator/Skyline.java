package sledwright.generator;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The points taken so far, asked whether one of them is no worse than a newcomer in width, usable memory and watts.
 *
 * <p>A Fenwick tree over the ranks of usable memory, the most first; each node holds a staircase of widths and watts, so a
 * question costs a few short searches.
 */
final class Skyline {

    /** Steps of falling width and, on each, fewer watts than on all wider ones. */
    private static final class Staircase {
        private double[] widths = new double[4];
        private long[] microwatts = new long[4];
        private int size;

        boolean matches(double width, long most) {
            int steps = wideEnough(width);
            return steps > 0 && microwatts[steps - 1] <= most;
        }

        void add(double width, long weight) {
            int from = wideEnough(width);
            if (from > 0 && microwatts[from - 1] <= weight) {
                return;
            }
            // A step of the same width or narrower that is no lighter is no step any more.
            int start = from > 0 && widths[from - 1] == width ? from - 1 : from;
            int end = start;
            while (end < size && microwatts[end] >= weight) {
                end++;
            }
            if (size + 1 > widths.length) {
                widths = Arrays.copyOf(widths, 2 * widths.length);
                microwatts = Arrays.copyOf(microwatts, 2 * microwatts.length);
            }
            System.arraycopy(widths, end, widths, start + 1, size - end);
            System.arraycopy(microwatts, end, microwatts, start + 1, size - end);
            widths[start] = width;
            microwatts[start] = weight;
            size += start + 1 - end;
        }

        /** How many steps are at least so wide. */
        private int wideEnough(double width) {
            int low = 0;
            int high = size;
            while (low < high) {
                int middle = (low + high) >>> 1;
                if (widths[middle] >= width) {
                    low = middle + 1;
                } else {
                    high = middle;
                }
            }
            return low;
        }
    }

    private final double[] usableDescending;
    private final List<Staircase> nodes;

    /** @param usable every figure of usable memory that will be asked about */
    Skyline(double[] usable) {
        double[] ascending = Arrays.stream(usable).distinct().sorted().toArray();
        usableDescending = new double[ascending.length];
        Arrays.setAll(usableDescending, i -> -ascending[ascending.length - 1 - i]);
        nodes = new ArrayList<>(ascending.length + 1);
        for (int i = 0; i <= ascending.length; i++) {
            nodes.add(new Staircase());
        }
    }

    boolean matches(double usableGb, double width, long microwatts) {
        for (int node = rank(usableGb); node > 0; node -= node & -node) {
            if (nodes.get(node).matches(width, microwatts)) {
                return true;
            }
        }
        return false;
    }

    void add(double usableGb, double width, long microwatts) {
        for (int node = rank(usableGb); node < nodes.size(); node += node & -node) {
            nodes.get(node).add(width, microwatts);
        }
    }

    private int rank(double usableGb) {
        return Arrays.binarySearch(usableDescending, -usableGb) + 1;
    }
}
