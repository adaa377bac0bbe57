package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalLong;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import sledwright.generator.time.Deadline;
import sledwright.words.Numbers;

/**
 * The best purchases if every course of events could be looked at before orders are filled, and units could be broken.
 *
 * <p>Benders' decomposition: planes over purchases, each an upper bound of what some courses can earn, close in on the best purchase from
 * above. Each next point lies between the best point by the planes and the best point seen (in-out separation, Ben-Ameur and Neto,
 * "Acceleration of cutting-plane and column generation algorithms", Networks 49, 2007).
 */
final class HindsightRelaxation {

    private static final int GROUPS = 4;
    private static final int BATCH = 8;
    private static final int MOST_BATCHES = 6;
    private static final double STEP = 0.5;
    private static final int ROUNDS_TOLD = 10;

    /**
     * @param bound  no plan earns more on these courses on average, minor units: orders earn beside being turned away
     * @param bought units of each purchase, which may be broken
     * @param prices what a unit of each row's limit is worth there, mean
     */
    record Answer(double bound, double[] bought, double[] prices, int rounds) {
    }

    private final Program program;
    private final Hindsight hindsight;
    private final int[] busy;
    private final Master master;
    private final SplittableRandom luck;
    private final Deadline deadline;
    private final List<double[]> seen = new ArrayList<>();

    HindsightRelaxation(Program program, Hindsight hindsight, long seed, Deadline deadline) {
        this.program = program;
        this.hindsight = hindsight;
        this.deadline = deadline;
        busy = hindsight.busy();
        master = new Master(program, GROUPS);
        luck = new SplittableRandom(seed);
    }

    private record Point(double[] bought, double value, double[] prices) {
    }

    /** The purchases that were looked at. */
    List<double[]> seen() {
        return seen;
    }

    /** Adds the planes that are known to hold at some purchases, without looking for better ones. */
    void recall(List<double[]> points) {
        for (double[] bought : points) {
            addPlanes(hindsight.best(program.limits(bought)));
        }
    }

    /**
     * The best purchases within a budget.
     *
     * @param start     where to begin; all of it shrinks alike where it costs too much
     * @param tolerance share of the bound that may stay open
     */
    Answer solve(OptionalLong budget, double[] start, double tolerance, int mostRounds, Consumer<String> progress) {
        Point inner = look(within(budget, start), tolerance);
        double bound = hindsight.utmost();
        int round = 0;
        while (round < mostRounds && !deadline.isOver()) {
            round++;
            Master.Answer outer = master.solve(budget);
            if (outer == null) {
                break;
            }
            bound = Math.min(bound, outer.bound());
            if (bound - inner.value() <= tolerance * Math.abs(bound)) {
                break;
            }
            double[] between = new double[outer.bought().length];
            double[] from = inner.bought();
            Arrays.setAll(between, o -> STEP * outer.bought()[o] + (1 - STEP) * from[o]);
            Point point = look(between, tolerance);
            if (point.value() > inner.value()) {
                inner = point;
            }
            if (round % ROUNDS_TOLD == 0) {
                progress.accept("round %s: %s %% of the bound reached".formatted(round, Numbers.plain(100 * inner.value() / bound)));
            }
        }
        return new Answer(bound, inner.bought(), inner.prices(), round);
    }

    private double[] within(OptionalLong budget, double[] bought) {
        double cost = program.cost(bought);
        double share = budget.isPresent() && cost > budget.getAsLong() ? budget.getAsLong() / cost : 1;
        return Arrays.stream(bought).map(units -> share * units).toArray();
    }

    /** What some purchases earn with hindsight; adds the planes that hold there. */
    private Point look(double[] bought, double enough) {
        double[] limits = program.limits(bought);
        int[] best = hindsight.best(limits);
        double mean = hindsight.mean(best, limits);
        for (int batch = 0; batch < MOST_BATCHES && busy.length > 0 && !deadline.isOver(); batch++) {
            int[] courses = luck.ints(BATCH, 0, busy.length).distinct().map(some -> busy[some]).toArray();
            double fell = hindsight.refine(courses, best, limits);
            best = hindsight.best(limits);
            if (fell <= enough / 4 * Math.abs(mean)) {
                break;
            }
        }
        mean = hindsight.mean(best, limits);
        seen.add(bought);
        addPlanes(best);
        return new Point(bought, mean - program.loss(bought), hindsight.meanPrices(best));
    }

    private void addPlanes(int[] best) {
        for (int g = 0; g < GROUPS; g++) {
            int from = (int) ((long) hindsight.courses() * g / GROUPS);
            int to = (int) ((long) hindsight.courses() * (g + 1) / GROUPS);
            master.add(g, hindsight.plane(best, from, to));
        }
    }
}
