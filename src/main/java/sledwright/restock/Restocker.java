package sledwright.restock;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import sledwright.domain.Catalog;
import sledwright.domain.RestockRequest;
import sledwright.generator.time.Deadline;
import sledwright.restock.Counter.Tally;
import sledwright.restock.RestockPlan.CurvePoint;
import sledwright.restock.RestockPlan.Expected;
import sledwright.words.Numbers;

/** Plans what to buy. */
public final class Restocker {

    private static final double Z_95 = NormalDistribution.of(0, 1).inverseCumulativeProbability(0.975);
    private static final double TOLERANCE = 0.002;
    private static final int MOST_ROUNDS = 60;
    private static final int MOST_REOPENED = 8;
    /** Rough shadow prices are enough to look for further builds. */
    private static final double ROUGH = 0.01;
    private static final int MOST_FINISHED = 1;
    /** Courses for rough shadow prices. */
    private static final int ROUGHLY = 80;
    /** Refused orders are examined in this many courses. */
    private static final int REFUSALS_IN = 3;

    private final Shelves shelves;
    private final RestockRequest request;
    private final long seed;
    private final Deadline deadline;
    private final Consumer<String> progress;
    private final Choices choices;
    private final List<Course> made;
    private final List<Course> tried;

    private Restocker(Catalog catalog, RestockRequest request, long seed, Deadline deadline, Consumer<String> progress) {
        this.request = request;
        this.seed = seed;
        this.deadline = deadline;
        this.progress = progress;
        shelves = new Shelves(catalog, request);
        progress.accept("searching builds for %s classes of orders".formatted(request.classes().size()));
        choices = new Choices(shelves, deadline);
        made = Courses.draw(request, request.samples(), 2 * seed + 1);
        tried = Courses.draw(request, request.samples(), 2 * seed + 2);
    }

    /**
     * The plan. The same seed gives the same plan, unless time runs out.
     *
     * @param progress takes a line now and then
     */
    public static RestockPlan plan(Catalog catalog, RestockRequest request, long seed, Deadline deadline, Consumer<String> progress) {
        return new Restocker(catalog, request, seed, deadline, progress).plan();
    }

    private RestockPlan plan() {
        Relaxed relaxed = relaxed();
        boolean closed = isClosed(relaxed);
        for (int again = 0; !closed && again < MOST_FINISHED && !deadline.isOver(); again++) {
            relaxed = relax(Optional.of(relaxed), TOLERANCE, made);
            closed = isClosed(relaxed);
        }
        return plan(relaxed, closed);
    }

    /** Over the builds that shadow prices of a few courses, and refused orders, lead to. */
    private Relaxed relaxed() {
        boolean closed = false;
        Optional<Relaxed> rough = Optional.empty();
        List<Course> few = made.subList(0, Math.min(made.size(), ROUGHLY));
        for (int again = 0; !closed && again < MOST_REOPENED && !deadline.isOver(); again++) {
            Relaxed relaxed = relax(rough, ROUGH, few);
            // Both, always: what the one finds the other may miss.
            closed = isClosed(relaxed) & !findMore(relaxed);
            rough = Optional.of(relaxed);
        }
        return relax(rough, TOLERANCE, made);
    }

    private RestockPlan plan(Relaxed relaxed, boolean closed) {
        progress.accept("trying whole quantities");
        Program program = relaxed.program();
        Counters counters = new Counters(program, shelves, made);
        Plans plans = new Plans(relaxed, counters, made, deadline);
        Plans.Stocked chosen = plans.find(request.budget(), stocked -> progress.accept("a plan of %s within %s".formatted(
                shelves.catalog().amount(plans.cost(stocked.bought())), shelves.catalog().amount(stocked.budget()))));
        int[] plan = chosen.bought();
        Tally with = chosen.counter().serve(program, plan, tried);
        Plans.Stocked nothing = plans.nothing();
        Tally without = nothing.counter().serve(program, nothing.bought(), tried);
        double offset = turnedAway(made);
        double[] prices = plans.pricesAt(plan);
        int[] near = plans.near(request.budget());
        Expected heldBack = expected(counters.at(prices, true).serve(program, plan, tried).margins());
        progress.accept("what each part is worth");
        Prospects prospects = new Prospects(request, shelves, choices, program, tried, deadline);
        double[] differences = new double[tried.size()];
        Arrays.setAll(differences, s -> with.margins()[s] - without.margins()[s]);
        return new RestockPlan(request, prospects.buys(plan, with), expected(with.margins()), expected(without.margins()),
                expected(differences), relaxed.answer().bound() - offset, inHindsight(relaxed, near) - offset, plans.atItsCounter(near),
                inHindsight(relaxed, plan) - offset, chosen.earns(), closed, choices.size(), made.size(), deadline.isOver(),
                prospects.outlook(with, without), prospects.parts(plan, with, prices), curve(plans, program), heldBack);
    }

    private List<CurvePoint> curve(Plans plans, Program program) {
        return plans.all().stream().map(stocked -> new CurvePoint(stocked.budget(), plans.cost(stocked.bought()),
                expected(stocked.counter().margins(program, stocked.bought(), tried)))).toList();
    }

    /** @param earlier what is known of fewer builds, which serves on */
    private Relaxed relax(Optional<Relaxed> earlier, double tolerance, List<Course> courses) {
        Program program = new Program(shelves, choices);
        Hindsight hindsight = new Hindsight(program, courses, earlier.map(known -> known.hindsight().winners().stream()
                .map(prices -> program.carried(known.program(), prices)).toList()).orElse(List.of()));
        HindsightRelaxation relaxation = new HindsightRelaxation(program, hindsight, seed, deadline);
        earlier.ifPresent(known -> relaxation.recall(known.relaxation().seen().stream()
                .map(bought -> program.carriedPurchases(known.program(), bought)).toList()));
        double[] start = earlier.map(known -> program.carriedPurchases(known.program(), known.answer().bought()))
                .orElseGet(() -> new double[program.purchases().size()]);
        HindsightRelaxation.Answer answer = relaxation.solve(request.budget(), start, tolerance, MOST_ROUNDS, progress);
        progress.accept("bound over %s on %s after %s".formatted(
                Numbers.counted(choices.size(), "build"), Numbers.counted(courses.size(), "course"),
                Numbers.counted(answer.rounds(), "round")));
        return new Relaxed(program, hindsight, relaxation, answer);
    }

    /** Whether the search knows no further build that would earn more than any known one at these shadow prices. */
    private boolean isClosed(Relaxed relaxed) {
        boolean[] open = new boolean[request.classes().size()];
        choices.forEach(k -> {
            if (!choices.of(k).isEmpty()) {
                Map<String, Double> scarce = relaxed.program().scarcity(k, relaxed.answer().prices());
                Optional<Choices.Found> found = choices.seek(k, sku -> Math.round(shelves.leftover(sku) + scarce.getOrDefault(sku, 0.0)));
                open[k] = found.isEmpty() || found.get().isNew() && relaxed.program().gain(found.get().choice())
                        - found.get().choice().parts(sku -> scarce.getOrDefault(sku, 0.0)) > 0;
            }
        });
        return noneOf(open);
    }

    private static boolean noneOf(boolean[] flags) {
        return IntStream.range(0, flags.length).noneMatch(i -> flags[i]);
    }

    /** Searches in what is left when orders are turned away; whether there was a build after all that nobody knew. */
    private boolean findMore(Relaxed relaxed) {
        Program program = relaxed.program();
        Counters counters = new Counters(program, shelves, made);
        int[] plan = new Plans(relaxed, counters, made, deadline).near(request.budget());
        Counter counter = counters.best(counters.around(relaxed.answer().prices()), plan);
        List<Map<Integer, Map<String, Integer>>> refusals = made.subList(0, Math.min(made.size(), REFUSALS_IN)).stream()
                .map(course -> counter.firstRefusals(program, plan, course)).toList();
        boolean[] found = new boolean[request.classes().size()];
        choices.forEach(k -> refusals.stream().filter(of -> of.containsKey(k) && choices.impossible(k).isEmpty() && !deadline.isOver())
                .forEach(of -> found[k] |= choices.seekIn(k, of.get(k))));
        return !noneOf(found);
    }

    /** What whole quantities earn on the courses that the plan is made on, each known in advance; at most. */
    private static double inHindsight(Relaxed relaxed, int[] plan) {
        double[] limits = relaxed.program().limits(Arrays.stream(plan).asDoubleStream().toArray());
        return relaxed.hindsight().mean(relaxed.hindsight().best(limits), limits) - relaxed.program().loss(plan);
    }

    /** What it would cost to turn every order away, mean. */
    private double turnedAway(List<Course> courses) {
        double sum = 0;
        for (Course course : courses) {
            for (int k : course.classes()) {
                sum += (double) request.classes().get(k).loss() * request.classes().get(k).machines();
            }
        }
        return sum / courses.size();
    }

    static Expected expected(double[] values) {
        double mean = Arrays.stream(values).average().orElse(0);
        double variance = Arrays.stream(values).map(value -> (value - mean) * (value - mean)).sum() / Math.max(1, values.length - 1);
        return new Expected(mean, Z_95 * Math.sqrt(variance / values.length));
    }
}
