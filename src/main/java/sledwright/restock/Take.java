package sledwright.restock;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Takes the parts of orders from the pools, which happens a thousand million times in a plan: rows of numbers, no objects. Most parts come
 * from up to three pools; they are taken without a branch, since no processor can guess which of the pools are empty.
 */
final class Take {

    private static final int FEW = 3;
    /** What a row has of each part that comes from few pools: its units and these pools. */
    private static final int STEP = 1 + FEW;

    private Take() {
    }

    /**
     * A row of what an order takes: how many parts come from few pools; units and pools of each of these; units of each other part, from
     * how many pools, and these in the order in which they are drawn on.
     *
     * @param parts   that are taken
     * @param units   of each part, parts or not
     * @param pools   of each part, in the order in which they are drawn on
     * @param nothing a pool that is always empty, where a part has fewer
     */
    static int[] row(int[] parts, int[] units, int[][] pools, int nothing) {
        IntStream.Builder row = IntStream.builder().add((int) Arrays.stream(parts).filter(i -> pools[i].length <= FEW).count());
        Arrays.stream(parts).filter(i -> pools[i].length <= FEW).forEach(i -> {
            row.add(units[i]);
            IntStream.range(0, FEW).forEach(j -> row.add(j < pools[i].length ? pools[i][j] : nothing));
        });
        Arrays.stream(parts).filter(i -> pools[i].length > FEW).forEach(i -> {
            row.add(units[i]).add(pools[i].length);
            Arrays.stream(pools[i]).forEach(row);
        });
        return row.build().toArray();
    }

    /**
     * Takes what an order needs, or nothing where something is missing.
     *
     * @param row     as {@link #row} has it
     * @param shortOf by way, where the part stands in its row that was missing last, if it is one of few pools: what stands there in this
     *                row, which may be another for another customer, is likely to be missing, too
     */
    static boolean isTaken(int[] row, int[] stock, int[] shortOf, int way) {
        int end = 1 + STEP * row[0];
        int likely = shortOf[way];
        if (likely > 0 && likely < end && isMissing(row, likely, stock)) {
            return false;
        }
        int missing = missing(row, stock);
        if (missing < row.length) {
            shortOf[way] = missing < end ? missing : 0;
            return false;
        }
        for (int i = 1; i < end; i += STEP) {
            int first = Math.min(row[i], stock[row[i + 1]]);
            stock[row[i + 1]] -= first;
            int second = Math.min(row[i] - first, stock[row[i + 2]]);
            stock[row[i + 2]] -= second;
            stock[row[i + 3]] -= row[i] - first - second;
        }
        takeOthers(row, end, stock);
        return true;
    }

    private static boolean isMissing(int[] row, int i, int[] stock) {
        return stock[row[i + 1]] + stock[row[i + 2]] + stock[row[i + 3]] < row[i];
    }

    /** Whether there is enough of everything. */
    static boolean isThere(int[] row, int[] stock) {
        return missing(row, stock) == row.length;
    }

    /** Where the first part stands of which there is not enough; the end of the row: there is none. */
    private static int missing(int[] row, int[] stock) {
        int end = 1 + STEP * row[0];
        int i = 1;
        while (i < end && !isMissing(row, i, stock)) {
            i += STEP;
        }
        if (i < end) {
            return i;
        }
        while (i < row.length) {
            int missing = row[i];
            int next = i + 2 + row[i + 1];
            for (int j = i + 2; j < next && missing > 0; j++) {
                missing -= stock[row[j]];
            }
            if (missing > 0) {
                return i;
            }
            i = next;
        }
        return i;
    }

    private static void takeOthers(int[] row, int from, int[] stock) {
        for (int i = from; i < row.length; i += 2 + row[i + 1]) {
            int missing = row[i];
            for (int j = i + 2; missing > 0; j++) {
                int left = stock[row[j]] - missing;
                stock[row[j]] = Math.max(0, left);
                missing = -left;
            }
        }
    }
}
