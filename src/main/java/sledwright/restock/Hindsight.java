package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
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

    Hindsight(Program program, List<Course> courses) {
        this.program = program;
        demand = courses.parallelStream().map(program::demand).toArray(int[][]::new);
        pool.add(priced(new double[program.limits(new double[0]).length]));
    }

    int courses() {
        return demand.length;
    }

    private Prices priced(double[] rows) {
        double[] gains = new double[program.kinds().size()];
        for (int t = 0; t < gains.length; t++) {
            Kind kind = program.kinds().get(t);
            for (int b = 0; b < kind.gain().length; b++) {
                double gain = kind.gain()[b];
                for (int i = 0; i < kind.rows()[b].length; i++) {
                    gain -= kind.units()[b][i] * rows[kind.rows()[b][i]];
                }
                gains[t] = Math.max(gains[t], gain);
            }
        }
        return new Prices(rows, gains);
    }

    /** The best kept prices for each course at given limits. */
    int[] best(double[] limits) {
        double[] paid = pool.stream().mapToDouble(prices -> dot(prices.rows(), limits)).toArray();
        return IntStream.range(0, demand.length).parallel().map(s -> {
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

    /** The share of some courses in the mean over all, as a plane. */
    Plane plane(int[] best, int from, int to) {
        double constant = 0;
        double[] slope = new double[pool.get(0).rows().length];
        int[] uses = new int[pool.size()];
        for (int s = from; s < to; s++) {
            uses[best[s]]++;
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

    /**
     * Solves the programs of some courses and keeps their prices.
     *
     * @return by how much the bound of these courses fell, in the mean
     */
    double refine(int[] courses, int[] best, double[] limits) {
        Prices[] found = Arrays.stream(courses).parallel().mapToObj(s -> solve(demand[s], limits)).toArray(Prices[]::new);
        double fell = 0;
        for (int i = 0; i < courses.length; i++) {
            if (found[i] != null) {
                pool.add(found[i]);
                fell += Math.max(0, bound(courses[i], best[courses[i]], limits) - bound(courses[i], pool.size() - 1, limits));
            }
        }
        return fell / courses.length;
    }

    /** The prices of the least bound; null where the library gives none. */
    private Prices solve(int[] orders, double[] limits) {
        ExpressionsBasedModel model = new ExpressionsBasedModel();
        Variable[] prices = new Variable[limits.length];
        for (int t = 0; t < orders.length; t++) {
            if (orders[t] == 0) {
                continue;
            }
            Kind kind = program.kinds().get(t);
            Variable gain = model.newVariable("k" + t).lower(0).weight(orders[t]);
            for (int b = 0; b < kind.gain().length; b++) {
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
        return priced(rows);
    }

    /** Amounts of money are brought near 1 for the library's sake, minor units. */
    private static final double SCALE = 10_000;

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
