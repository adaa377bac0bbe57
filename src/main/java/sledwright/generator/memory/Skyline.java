package sledwright.generator.memory;

import java.util.Arrays;

/**
 * Priced and weighed populations, asked whether one of them is at least so wide, no dearer and no heavier than a newcomer.
 *
 * <p>A Fenwick tree over the ranks of width, the widest first; each node holds a staircase of prices and watts, so a question
 * costs a few short searches.
 */
final class Skyline {

    /** Steps of rising price and, on each, fewer watts than on all cheaper ones. */
    private static final class Staircase {
        private long[] prices = new long[4];
        private long[] microwatts = new long[4];
        private int size;

        boolean matches(long price, long weight) {
            if (size == 0 || microwatts[size - 1] > weight || prices[0] > price) {
                return false;
            }
            int steps = upTo(price);
            return microwatts[steps - 1] <= weight;
        }

        void add(long price, long weight) {
            if (matches(price, weight)) {
                return;
            }
            int from = upTo(price);
            // A step of the same price, or a dearer one that is no lighter, is no step any more.
            int start = from > 0 && prices[from - 1] == price ? from - 1 : from;
            int end = start;
            while (end < size && microwatts[end] >= weight) {
                end++;
            }
            if (size + 1 > prices.length) {
                prices = Arrays.copyOf(prices, 2 * prices.length);
                microwatts = Arrays.copyOf(microwatts, 2 * microwatts.length);
            }
            System.arraycopy(prices, end, prices, start + 1, size - end);
            System.arraycopy(microwatts, end, microwatts, start + 1, size - end);
            prices[start] = price;
            microwatts[start] = weight;
            size += start + 1 - end;
        }

        /** How many steps are no dearer. */
        private int upTo(long price) {
            int low = 0;
            int high = size;
            while (low < high) {
                int middle = (low + high) >>> 1;
                if (prices[middle] <= price) {
                    low = middle + 1;
                } else {
                    high = middle;
                }
            }
            return low;
        }
    }

    private final Staircase[] nodes;

    /** @param ranks how many distinct widths there are */
    Skyline(int ranks) {
        nodes = new Staircase[ranks + 1];
        Arrays.setAll(nodes, node -> new Staircase());
    }

    /** @param rank of the width, 1 for the widest */
    boolean matches(int rank, long price, long microwatts) {
        for (int node = rank; node > 0; node -= node & -node) {
            if (nodes[node].matches(price, microwatts)) {
                return true;
            }
        }
        return false;
    }

    /** @param rank of the width, 1 for the widest */
    void add(int rank, long price, long microwatts) {
        for (int node = rank; node < nodes.length; node += node & -node) {
            nodes[node].add(price, microwatts);
        }
    }
}
