package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;
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
    }

    private final Program program;
    private final int[][] demand;
    private final List<Prices> pool = new ArrayList<>();

    /** Prices at which nothing that is bought counts. */
    private final Prices utmost;

    /** The kept prices that have been the best for some course. */
    private final BitSet winners = new BitSet();
    /** By course, the prices that were the best when last asked for. */
    private int[] last = {};

    /** @param known prices of the rows that may be good ones */
    Hindsight(Program program, List<Course> courses, List<double[]> known) {
        this.program = program;
        demand = courses.parallelStream().map(program::demand).toArray(int[][]::new);
        double[] free = new double[program.limits(new double[0]).length];
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

    /** The prices of bargains follow from those of what orders take. */
    private Prices priced(double[] of) {
        double[] rows = of.clone();
        program.bargains().forEach(bargain -> rows[bargain.bought()] = Math.max(0, bargain.spare() - rows[bargain.taken()]));
        double[] gains = new double[program.kinds().size()];
        for (int t = 0; t < gains.length; t++) {
            Kind kind = program.kinds().get(t);
            for (int b = 0; b < kind.gain().length; b++) {
                gains[t] = Math.max(gains[t], gain(kind, b, rows));
            }
        }
        return new Prices(rows, gains);
    }

    /** The best kept prices for each course at given limits. */
    int[] best(double[] limits) {
        double[] paid = pool.stream().mapToDouble(prices -> dot(prices.rows(), limits)).toArray();
        last = IntStream.range(0, demand.length).parallel().map(s -> {
            int best = 0;
            double least = Double.POSITIVE_INFINITY;
            for (int j = 0; j < paid.length; j++) {
                double bound = paid[j];
                double[] gains = pool.get(j).kinds();
                int[] orders = demand[s];
                for (int t = 0; t < orders.length && bound < least; t++) {
                    bound += gains[t] * orders[t];
                }
                if (bound < least) {
                    least = bound;
                    best = j;
                }
            }
            return best;
        }).toArray();
        return last;
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
        double bound = dot(pool.get(prices).rows(), limits);
        for (int t = 0; t < demand[course].length; t++) {
            bound += pool.get(prices).kinds()[t] * demand[course][t];
        }
        return bound;
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
        Prices[] found = Arrays.stream(courses).parallel().mapToObj(s -> solve(demand[s], limits, pool.get(best[s])))
                .toArray(Prices[]::new);
        double fell = 0;
        for (int i = 0; i < courses.length; i++) {
            if (found[i] != null) {
                pool.add(found[i]);
                fell += Math.max(0, bound(courses[i], best[courses[i]], limits) - bound(courses[i], pool.size() - 1, limits));
            }
        }
        return fell / courses.length;
    }

    /**
     * The prices of the least bound; null where the library gives none. Few builds matter in one course, so the program begins with those
     * that are best at the prices known so far and takes in others that its own prices would favour. Left off early, its prices are good
     * ones still.
     */
    private Prices solve(int[] orders, double[] limits, Prices known) {
        List<Set<Integer>> builds = new ArrayList<>();
        for (int t = 0; t < orders.length; t++) {
            builds.add(new TreeSet<>());
        }
        takeIn(builds, orders, pool.get(0));
        takeIn(builds, orders, known);
        Prices prices = null;
        for (int turn = 0; turn < MOST_TURNS; turn++) {
            double[] rows = solve(orders, limits, builds, program);
            if (rows == null) {
                return prices;
            }
            prices = priced(rows);
            if (!takeIn(builds, orders, prices)) {
                return prices;
            }
        }
        return prices;
    }

    /** Adds for each kind of order the build that gains the most at some prices; whether any was new. */
    private boolean takeIn(List<Set<Integer>> builds, int[] orders, Prices prices) {
        boolean more = false;
        for (int t = 0; t < orders.length; t++) {
            if (orders[t] > 0) {
                Kind kind = program.kinds().get(t);
                int best = -1;
                double most = NOTHING;
                for (int b = 0; b < kind.gain().length; b++) {
                    double gain = gain(kind, b, prices.rows());
                    if (gain > most) {
                        most = gain;
                        best = b;
                    }
                }
                more |= best >= 0 && builds.get(t).add(best);
            }
        }
        return more;
    }

    private static double gain(Kind kind, int build, double[] rows) {
        double gain = kind.gain()[build];
        for (int i = 0; i < kind.rows()[build].length; i++) {
            gain -= kind.units()[build][i] * rows[kind.rows()[build][i]];
        }
        return gain;
    }

    private static double[] solve(int[] orders, double[] limits, List<Set<Integer>> builds, Program program) {
        ExpressionsBasedModel model = new ExpressionsBasedModel();
        Variable[] prices = new Variable[limits.length];
        for (Program.Bargain bargain : program.bargains()) {
            if (prices[bargain.taken()] == null) {
                prices[bargain.taken()] = model.newVariable("r" + bargain.taken()).lower(0);
            }
            prices[bargain.bought()] = model.newVariable("r" + bargain.bought()).lower(0).weight(limits[bargain.bought()]);
            Expression covers = model.newExpression("s" + bargain.bought()).lower(bargain.spare() / SCALE);
            covers.set(prices[bargain.taken()], 1);
            covers.set(prices[bargain.bought()], 1);
        }
        for (int t = 0; t < orders.length; t++) {
            if (builds.get(t).isEmpty()) {
                continue;
            }
            Kind kind = program.kinds().get(t);
            Variable gain = model.newVariable("k" + t).lower(0).weight(orders[t]);
            for (int b : builds.get(t)) {
                Expression covers = model.newExpression("b" + t + "." + b).lower(kind.gain()[b] / SCALE);
                covers.set(gain, 1);
                for (int i = 0; i < kind.rows()[b].length; i++) {
                    int row = kind.rows()[b][i];
                    if (prices[row] == null) {
                        prices[row] = model.newVariable("r" + row).lower(0).weight(limits[row]);
                    }
                    covers.set(prices[row], kind.units()[b][i]);
                }
            }
        }
        Optimisation.Result result = model.minimise();
        if (!result.getState().isFeasible()) {
            return null;
        }
        double[] rows = new double[limits.length];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = prices[i] == null ? 0 : Math.max(0, prices[i].getValue().doubleValue() * SCALE);
        }
        return rows;
    }

    /** Amounts of money are brought near 1 for the library's sake, minor units. */
    private static final double SCALE = 10_000;

    /** A gain below a coin's share is none. */
    private static final double NOTHING = 1e-3;
    private static final int MOST_TURNS = 12;

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
