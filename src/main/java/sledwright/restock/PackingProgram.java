package sledwright.restock;

import java.util.Arrays;
import java.util.function.Function;

/**
 * A linear program that takes columns, each as much as it likes, so that they earn the most within the limits of some rows, all of which
 * are 0 or more: the revised primal simplex method (G. Dantzig, "Linear Programming and Extensions", chapter 9), which may begin with
 * nothing taken. Few columns are ever taken, so of the inverse of the basis only those columns are kept that are not a unit vector.
 */
final class PackingProgram {

    /**
     * What may be taken.
     *
     * @param gain  of a unit
     * @param rows  that it draws on
     * @param units that it takes there; may be negative
     */
    record Column(double gain, int[] rows, double[] units) {

        /** What a unit gains beyond what it draws on. */
        double beyond(double[] prices) {
            double left = gain;
            for (int i = 0; i < rows.length; i++) {
                left -= units[i] * prices[rows[i]];
            }
            return left;
        }
    }

    /** A gain below a coin's share is none, minor units. */
    static final double NOTHING = 1e-3;

    private static final double LEAST_PIVOT = 1e-7;
    /** Limits differ by this, so that no two rows are used up at once and the method cannot go round in circles. */
    private static final double APART = 1e-7;
    private static final int NONE = -1;

    private final int rows;
    private final double[] prices;
    /** How much there is of what each row of the basis stands for. */
    private final double[] level;
    /** Columns of the inverse of the basis that are not a unit vector; null: it is one. */
    private final double[][] inverse;
    private final int[] kept;
    private int count;

    PackingProgram(double[] limits) {
        rows = limits.length;
        prices = new double[rows];
        level = new double[rows];
        Arrays.setAll(level, i -> limits[i] + APART * (1 + i % 97));
        inverse = new double[rows][];
        kept = new int[rows];
    }

    /**
     * What a unit of each row's limit is worth.
     *
     * @param best       the column that gains the most beyond the prices so far; null where none gains anything
     * @param mostChanges how often the basis may change; prices of a program that was left off are good ones still
     */
    double[] prices(Function<double[], Column> best, int mostChanges) {
        double[] direction = new double[rows];
        for (int change = 0; change < mostChanges; change++) {
            int unused = notWorthUsingUp();
            Column taken = unused == NONE ? best.apply(prices) : null;
            if (unused == NONE && taken == null) {
                break;
            }
            double gain = unused == NONE ? taken.beyond(prices) : -prices[unused];
            Arrays.fill(direction, 0);
            if (unused == NONE) {
                for (int i = 0; i < taken.rows().length; i++) {
                    add(direction, taken.rows()[i], taken.units()[i]);
                }
            } else {
                add(direction, unused, 1);
            }
            int leaves = leaving(direction);
            if (leaves == NONE) {
                break;
            }
            exchange(leaves, direction, gain);
        }
        double[] worth = new double[rows];
        Arrays.setAll(worth, i -> Math.max(0, prices[i]));
        return worth;
    }

    /** A row whose limit is not worth using up, though it is. */
    private int notWorthUsingUp() {
        int least = NONE;
        for (int j = 0; j < count; j++) {
            if (prices[kept[j]] < (least == NONE ? -NOTHING : prices[least])) {
                least = kept[j];
            }
        }
        return least;
    }

    private void add(double[] direction, int row, double units) {
        if (inverse[row] == null) {
            direction[row] += units;
        } else {
            for (int i = 0; i < rows; i++) {
                direction[i] += units * inverse[row][i];
            }
        }
    }

    /** The row of the basis that is used up first. */
    private int leaving(double[] direction) {
        int first = NONE;
        for (int i = 0; i < rows; i++) {
            if (direction[i] > LEAST_PIVOT && (first == NONE || level[i] * direction[first] < level[first] * direction[i])) {
                first = i;
            }
        }
        return first;
    }

    private void exchange(int leaves, double[] direction, double gain) {
        if (inverse[leaves] == null) {
            inverse[leaves] = new double[rows];
            inverse[leaves][leaves] = 1;
            kept[count++] = leaves;
        }
        double pivot = direction[leaves];
        for (int j = 0; j < count; j++) {
            double[] column = inverse[kept[j]];
            if (column[leaves] != 0) {
                double share = column[leaves] / pivot;
                subtract(share, direction, column);
                column[leaves] = share;
                prices[kept[j]] += gain * share;
            }
        }
        double taken = level[leaves] / pivot;
        subtract(taken, direction, level);
        level[leaves] = taken;
    }

    private static void subtract(double times, double[] direction, double[] from) {
        for (int i = 0; i < direction.length; i++) {
            from[i] -= times * direction[i];
        }
    }
}
