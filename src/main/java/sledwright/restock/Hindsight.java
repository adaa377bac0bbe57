package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import sledwright.restock.PackingProgram.Column;
import sledwright.restock.Program.Kind;

/**
 * What each course of events could earn at most with given limits, if it were known in advance.
 *
 * <p>Prices of the rows, whatever they are, bound every course from above by duality: units are paid for at these prices, and each
 * order gains at most what its best build earns beyond them. Prices that are best for one course are kept and tried on all others
 * (Higle and Sen, "Stochastic decomposition", Mathematics of Operations Research 16, 1991), so few programs have to be solved.
 */
final class Hindsight {

    /**
     * Prices of the rows.
     *
     * @param rows  what a unit of each limit is paid
     * @param kinds what an order of each kind gains beyond that
     */
    record Prices(double[] rows, double[] kinds) {
    }

    /**
     * A bound on the mean of some courses, as a function of the limits: {@code constant + slope * limits}.
     */
    record Plane(double constant, double[] slope) {

        double at(double[] point) {
            return constant + dot(slope, point);
        }
    }

    private final Program program;
    private final int[][] demand;
    /** By kind, the builds that fill an order of it; behind the program's rows each kind has one for its orders. The last are bargains. */
    private final Column[][] columns;
    private final List<Prices> pool = new ArrayList<>();

    /** Prices at which nothing that is bought counts. */
    private final Prices utmost;

    /** The kept prices that have been the best for some course. */
    private final BitSet winners = new BitSet();
    /** By course, the prices that were the best when last asked for; at which limits, and among how many. */
    private int[] last = {};
    private double[] lastLimits = {};
    private int lastTried;

    /** @param known prices of the rows that may be good ones */
    Hindsight(Program program, List<Course> courses, List<double[]> known) {
        this.program = program;
        demand = courses.parallelStream().map(program::demand).toArray(int[][]::new);
        double[] free = new double[program.limits(new double[0]).length];
        columns = columns(program, free.length);
        pool.add(priced(free));
        program.bargains().forEach(bargain -> free[bargain.taken()] = Math.max(free[bargain.taken()], bargain.spare()));
        utmost = priced(free);
        known.parallelStream().map(this::priced).forEachOrdered(pool::add);
    }

    /** Prices of the rows that have been the best for some course. */
    List<double[]> winners() {
        return winners.stream().filter(j -> j > 0).mapToObj(j -> pool.get(j).rows()).toList();
    }

    /** Those that are best for most courses at the point that was looked at last. */
    List<double[]> foremost(int most) {
        int[] uses = new int[pool.size()];
        Arrays.stream(last).forEach(j -> uses[j]++);
        return IntStream.range(1, uses.length).filter(j -> uses[j] > 0).boxed().sorted(Comparator.comparingInt(j -> -uses[j])).limit(most)
                .map(j -> pool.get(j).rows()).toList();
    }

    int courses() {
        return demand.length;
    }

    private static Column[][] columns(Program program, int rows) {
        Column[][] columns = new Column[program.kinds().size() + 1][];
        for (int t = 0; t < program.kinds().size(); t++) {
            Kind kind = program.kinds().get(t);
            columns[t] = new Column[kind.gain().length];
            for (int b = 0; b < columns[t].length; b++) {
                int[] drawn = Arrays.copyOf(kind.rows()[b], kind.rows()[b].length + 1);
                double[] units = Arrays.copyOf(kind.units()[b], drawn.length);
                drawn[drawn.length - 1] = rows + t;
                units[drawn.length - 1] = 1;
                columns[t][b] = new Column(kind.gain()[b], drawn, units);
            }
        }
        columns[columns.length - 1] = program.bargains().stream()
                .map(bargain -> new Column(bargain.spare(), new int[] {bargain.taken(), bargain.bought()}, new double[] {1, 1}))
                .toArray(Column[]::new);
        return columns;
    }

    /** The prices of bargains follow from those of what orders take. */
    private Prices priced(double[] of) {
        double[] rows = of.clone();
        program.bargains().forEach(bargain -> rows[bargain.bought()] = Math.max(0, bargain.spare() - rows[bargain.taken()]));
        double[] gains = new double[program.kinds().size()];
        double[] padded = Arrays.copyOf(rows, rows.length + gains.length);
        for (int t = 0; t < gains.length; t++) {
            for (Column build : columns[t]) {
                gains[t] = Math.max(gains[t], build.beyond(padded));
            }
        }
        return new Prices(rows, gains);
    }

    /** The best kept prices for each course at given limits; of equals the first. */
    int[] best(double[] limits) {
        double[] paid = pool.stream().mapToDouble(prices -> dot(prices.rows(), limits)).toArray();
        // What was the best elsewhere is good here, so most are soon seen to be worse; at the same limits only new ones can be better.
        int tried = Arrays.equals(limits, lastLimits) ? lastTried : 0;
        int[] before = last;
        last = IntStream.range(0, demand.length).parallel().map(s -> {
            int best = before.length == 0 ? 0 : before[s];
            double least = gained(paid[best], best, s, Double.POSITIVE_INFINITY);
            for (int j = tried; j < paid.length; j++) {
                double bound = gained(paid[j], j, s, least);
                if (bound < least || bound == least && j < best) {
                    least = bound;
                    best = j;
                }
            }
            return best;
        }).toArray();
        lastLimits = limits.clone();
        lastTried = paid.length;
        return last;
    }

    /** What is paid and what a course's orders gain beyond it; no more than the first that is above some bound. */
    private double gained(double paid, int prices, int course, double most) {
        double sum = paid;
        double[] gains = pool.get(prices).kinds();
        int[] orders = demand[course];
        for (int t = 0; t < orders.length && sum <= most; t++) {
            sum += gains[t] * orders[t];
        }
        return sum;
    }

    /** The mean of what each course can earn, whatever is bought: each order at most what its best build earns. */
    double utmost() {
        double sum = 0;
        for (int[] orders : demand) {
            for (int t = 0; t < orders.length; t++) {
                sum += utmost.kinds()[t] * orders[t];
            }
        }
        return sum / demand.length;
    }

    double bound(int course, int prices, double[] limits) {
        return gained(dot(pool.get(prices).rows(), limits), prices, course, Double.POSITIVE_INFINITY);
    }

    /** The mean bound over all courses. */
    double mean(int[] best, double[] limits) {
        double[] bounds = IntStream.range(0, demand.length).parallel().mapToDouble(s -> bound(s, best[s], limits)).toArray();
        // One after the other: the sum must not depend on how many workers there are.
        double sum = 0;
        for (double bound : bounds) {
            sum += bound;
        }
        return sum / demand.length;
    }

    /** The share of some courses in the average over all, as a plane. */
    Plane plane(int[] best, int from, int to) {
        double constant = 0;
        double[] slope = new double[pool.get(0).rows().length];
        int[] uses = new int[pool.size()];
        for (int s = from; s < to; s++) {
            uses[best[s]]++;
            winners.set(best[s]);
            double[] gains = pool.get(best[s]).kinds();
            for (int t = 0; t < gains.length; t++) {
                constant += gains[t] * demand[s][t];
            }
        }
        for (int j = 0; j < uses.length; j++) {
            if (uses[j] > 0) {
                double[] rows = pool.get(j).rows();
                for (int i = 0; i < slope.length; i++) {
                    slope[i] += uses[j] * rows[i];
                }
            }
        }
        for (int i = 0; i < slope.length; i++) {
            slope[i] /= demand.length;
        }
        return new Plane(constant / demand.length, slope);
    }

    /** Courses with any order; in the others nothing is scarce. */
    int[] busy() {
        return IntStream.range(0, demand.length).filter(s -> Arrays.stream(demand[s]).anyMatch(orders -> orders > 0)).toArray();
    }

    /**
     * Solves the programs of some courses and keeps their prices.
     *
     * @return by how much the bound of these courses fell, on average
     */
    double refine(int[] courses, int[] best, double[] limits) {
        Prices[] found = Arrays.stream(courses).parallel().mapToObj(s -> solve(demand[s], limits)).toArray(Prices[]::new);
        double fell = 0;
        for (int i = 0; i < courses.length; i++) {
            pool.add(found[i]);
            fell += Math.max(0, bound(courses[i], best[courses[i]], limits) - bound(courses[i], pool.size() - 1, limits));
        }
        return fell / courses.length;
    }

    /** The prices of the least bound. */
    private Prices solve(int[] orders, double[] limits) {
        double[] all = new double[limits.length + orders.length];
        Arrays.setAll(all, i -> i < limits.length ? limits[i] : orders[i - limits.length]);
        return priced(Arrays.copyOf(new PackingProgram(all).prices(prices -> best(orders, prices), MOST_CHANGES), limits.length));
    }

    /** What is worth taking the most; null where nothing is. */
    private Column best(int[] orders, double[] prices) {
        Column best = null;
        double most = PackingProgram.NOTHING;
        for (int t = 0; t < columns.length; t++) {
            if (t == orders.length || orders[t] > 0) {
                for (Column column : columns[t]) {
                    double beyond = column.beyond(prices);
                    if (beyond > most) {
                        most = beyond;
                        best = column;
                    }
                }
            }
        }
        return best;
    }

    /** How often the basis of one course's program may change. */
    private static final int MOST_CHANGES = 5000;

    /** The mean price of each row over all courses. */
    double[] meanPrices(int[] best) {
        return plane(best, 0, demand.length).slope();
    }

    private static double dot(double[] one, double[] other) {
        double sum = 0;
        for (int i = 0; i < one.length; i++) {
            sum += one[i] * other[i];
        }
        return sum;
    }
}
