package sledwright.restock;

import java.util.Arrays;
import java.util.List;

/** What courses leave on the shelf, counted in whole numbers and in parts of the courses, so that sums come out the same on any machine. */
final class LeftOver {

    private final int[] standing;
    private final int[] stock;
    private final List<int[]> alike;
    private final int[] courses;
    /** By part and pool: the fewest units that were left in any course. */
    private final int[][] least;
    /** By part and group of pools: units that orders took, their squares, courses that took more than stood there. */
    private final long[][] used;
    private final long[][] squares;
    private final int[][] fellShort;

    /**
     * @param parts    in which courses are counted
     * @param standing units by pool without purchases
     * @param stock    with them
     * @param alike    the pools of each part number
     */
    LeftOver(int parts, int[] standing, int[] stock, List<int[]> alike) {
        this.standing = standing;
        this.stock = stock;
        this.alike = alike;
        courses = new int[parts];
        least = new int[parts][];
        Arrays.setAll(least, part -> stock.clone());
        used = new long[parts][alike.size()];
        squares = new long[parts][alike.size()];
        fellShort = new int[parts][alike.size()];
    }

    /** Takes in what is left after a course. */
    void add(int part, int[] now) {
        courses[part]++;
        for (int p = 0; p < now.length; p++) {
            least[part][p] = Math.min(least[part][p], now[p]);
        }
        for (int i = 0; i < alike.size(); i++) {
            long taken = 0;
            long more = 0;
            for (int p : alike.get(i)) {
                taken += stock[p] - now[p];
                more += stock[p] - standing[p] - now[p];
            }
            used[part][i] += taken;
            squares[part][i] += taken * taken;
            fellShort[part][i] += more > 0 ? 1 : 0;
        }
    }

    /** By pool, the fewest units that any course leaves. */
    int[] least() {
        int[] all = stock.clone();
        for (int[] part : least) {
            for (int p = 0; p < all.length; p++) {
                all[p] = Math.min(all[p], part[p]);
            }
        }
        return all;
    }

    private long count() {
        return Arrays.stream(courses).sum();
    }

    private static long sum(long[][] parts, int i) {
        return Arrays.stream(parts).mapToLong(part -> part[i]).sum();
    }

    /** Units of a part number that are left, mean. */
    double mean(int i) {
        return Arrays.stream(alike.get(i)).map(p -> stock[p]).sum() - (double) sum(used, i) / count();
    }

    /** Of the units that orders take, from course to course. */
    double deviation(int i) {
        double mean = (double) sum(used, i) / count();
        double scatter = sum(squares, i) - mean * sum(used, i);
        return Math.sqrt(Math.max(0, scatter) / Math.max(1, count() - 1));
    }

    /** The share of courses that take more units than stand there without purchases. */
    double drawnOnPurchases(int i) {
        return (double) Arrays.stream(fellShort).mapToInt(part -> part[i]).sum() / count();
    }
}
