package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import sledwright.domain.Catalog;
import sledwright.domain.RestockRequest;
import sledwright.generator.time.Deadline;
import sledwright.restock.Counter.Tally;
import sledwright.restock.FinalChoice.Chosen;
import sledwright.restock.RestockPlan.Bound;
import sledwright.restock.RestockPlan.CurvePoint;
import sledwright.restock.RestockPlan.Earned;
import sledwright.restock.RestockPlan.Effort;
import sledwright.restock.RestockPlan.Expected;
import sledwright.restock.RestockPlan.PartOutlook;
import sledwright.words.Numbers;

/** Plans what to buy. */
public final class Restocker {

    private static final double Z_95 = NormalDistribution.of(0, 1).inverseCumulativeProbability(0.975);
    private static final double TOLERANCE = 0.002;
    private static final int MOST_ROUNDS = 60;
    private static final int MOST_REOPENED = 6;
    /** Rough shadow prices are enough to look for further builds. */
    private static final double ROUGH = 0.01;
    /** Courses for rough shadow prices, and their seed. */
    private static final int ROUGHLY = 80;
    private static final long FOUND_ON = -1;
    /** Builds are looked for at these shares of what would be spent if money did not matter. */
    private static final double[] SHARES = {0, 0.4};
    /** The last choice is made on this many times the samples. */
    private static final int FURTHER = 2;
    /** This many prices that are best for single courses lead to builds, too. */
    private static final int MOST_WINNERS = 2;

    private final Shelves shelves;
    private final RestockRequest request;
    private final long seed;
    private final Deadline deadline;
    private final Consumer<String> progress;
    private final Choices choices;
    private final List<Course> made;
    private final List<Course> further;
    private final List<Course> tried;
    /** What is known of fewer builds. */
    private Optional<Relaxed> known = Optional.empty();

    private Restocker(Catalog catalog, RestockRequest request, long seed, Deadline deadline, Consumer<String> progress) {
        this.request = request;
        this.seed = seed;
        this.deadline = deadline;
        this.progress = progress;
        shelves = new Shelves(catalog, request);
        progress.accept("searching builds for %s of orders".formatted(Numbers.counted(request.classes().size(), "class", "classes")));
        choices = new Choices(shelves, deadline);
        List<Course> drawn = Courses.draw(request, (1 + FURTHER) * request.samples(), 2 * seed + 1);
        made = drawn.subList(0, request.samples());
        further = drawn.subList(request.samples(), drawn.size());
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
        findBuilds();
        Relaxed relaxed = relax(made, seed);
        progress.accept("what is earned if nothing is bought");
        Racks racks = new Racks(relaxed.program(), shelves, Stream.of(made, further, tried).flatMap(List::stream).toList());
        Plans plans = new Plans(relaxed, racks, made, further, deadline);
        HindsightRelaxation.Answer answer = relaxed.relaxation().solve(request.budget(), relaxed.start(), TOLERANCE, MOST_ROUNDS, progress);
        progress.accept(told(made.size(), answer.rounds()));
        return plan(relaxed.with(answer), plans);
    }

    private String told(int courses, int rounds) {
        return "bound over %s on %s after %s".formatted(Numbers.counted(choices.size(), "build"), Numbers.counted(courses, "course"),
                Numbers.counted(rounds, "round"));
    }

    /**
     * Finds builds that shadow prices lead to, of nothing bought, of all that would pay and between. The budget of the request and the luck
     * of its seed do not matter here, so that plans for all of them know the same builds.
     */
    private void findBuilds() {
        List<Course> few = Courses.draw(request, Math.min(request.samples(), ROUGHLY), FOUND_ON);
        boolean more = true;
        for (int again = 0; more && again < MOST_REOPENED && !deadline.isOver(); again++) {
            Relaxed rough = relax(few, FOUND_ON);
            HindsightRelaxation.Answer all = rough.relaxation().solve(OptionalLong.empty(), rough.start(), ROUGH, MOST_ROUNDS, line -> { });
            more = findMore(rough.program(), all.prices());
            long cost = Math.round(rough.program().cost(all.bought()));
            for (double share : SHARES) {
                HindsightRelaxation.Answer some = rough.relaxation().solve(OptionalLong.of(Math.round(share * cost)), all.bought(), ROUGH,
                        MOST_ROUNDS, line -> { });
                more |= findMore(rough.program(), some.prices());
            }
            for (double[] prices : rough.hindsight().foremost(MOST_WINNERS)) {
                more |= findMore(rough.program(), prices);
            }
            known = Optional.of(rough.with(all));
            progress.accept(told(few.size(), again + 1));
        }
    }

    private RestockPlan plan(Relaxed relaxed, Plans plans) {
        progress.accept("trying whole quantities");
        Program program = relaxed.program();
        Chosen chosen = plans.find(request.budget(), relaxed.answer(), (budget, cost) -> progress.accept(budget.isPresent()
                ? "a plan of %s within %s".formatted(shelves.catalog().amount(cost), shelves.catalog().amount(budget.getAsLong()))
                : "a plan of %s".formatted(shelves.catalog().amount(cost))));
        int[] plan = chosen.stocked().bought();
        Tally with = chosen.stocked().counter().serve(plan, tried);
        Tally without = plans.nothing().stocked().counter().serve(plans.nothing().stocked().bought(), tried);
        double offset = turnedAway(made);
        int[] near = plans.near(relaxed.answer(), request.budget());
        boolean closed = !findMore(program, relaxed.answer().prices());
        progress.accept("what each part is worth");
        Prospects prospects = new Prospects(request, shelves, choices, program, tried, deadline);
        double[] differences = new double[tried.size()];
        Arrays.setAll(differences, s -> with.margins()[s] - without.margins()[s]);
        double scatter = chosen.scatter(tried);
        double scatterWithout = plans.nothing().scatter(tried);
        Earned earned = new Earned(expected(with.margins(), scatter), expected(without.margins(), scatterWithout),
                expected(differences, Math.hypot(scatter, scatterWithout)), curve(plans, scatter));
        Bound bound = new Bound(relaxed.answer().bound() - offset, inHindsight(relaxed, near) - offset, plans.atItsCounter(near),
                inHindsight(relaxed, plan) - offset, chosen.stocked().mean(made));
        List<PartOutlook> parts = prospects.parts(plan, with, plans.pricesAt(plan));
        return new RestockPlan(request, prospects.buys(plan, with), earned, bound,
                new Effort(choices.size(), closed, made.size(), deadline.isOver()), prospects.outlook(with, without), parts);
    }

    /** @param scatter of the whole budget, which stands for the others */
    private List<CurvePoint> curve(Plans plans, double scatter) {
        List<CurvePoint> curve = new ArrayList<>();
        plans.all().forEach((budget, chosen) -> curve.add(new CurvePoint(budget, plans.cost(chosen.stocked().bought()),
                expected(chosen.stocked().counter().margins(chosen.stocked().bought(), tried),
                        budget == 0 ? plans.nothing().scatter(tried) : scatter))));
        return curve;
    }

    /** A relaxation over the builds that are known now; what is known of fewer builds serves on. */
    private Relaxed relax(List<Course> courses, long luck) {
        Program program = new Program(shelves, choices);
        Hindsight hindsight = new Hindsight(program, courses, known.map(earlier -> earlier.hindsight().winners().stream()
                .map(prices -> program.carried(earlier.program(), prices)).toList()).orElse(List.of()));
        HindsightRelaxation relaxation = new HindsightRelaxation(program, hindsight, luck, deadline);
        known.ifPresent(earlier -> relaxation.recall(earlier.relaxation().seen().stream()
                .map(bought -> program.carriedPurchases(earlier.program(), bought)).toList()));
        double[] start = known.map(earlier -> program.carriedPurchases(earlier.program(), earlier.answer().bought()))
                .orElseGet(() -> new double[program.purchases().size()]);
        return new Relaxed(program, hindsight, relaxation, start, null);
    }

    /** Whether the search found a build that would earn more than any known one at some shadow prices. */
    private boolean findMore(Program program, double[] prices) {
        boolean[] more = new boolean[request.classes().size()];
        choices.forEach(k -> {
            if (!choices.of(k).isEmpty()) {
                Map<String, Double> scarce = program.scarcity(k, prices);
                more[k] = choices.seek(k, sku -> Math.round(shelves.leftover(sku) + scarce.getOrDefault(sku, 0.0)));
            }
        });
        return IntStream.range(0, more.length).anyMatch(k -> more[k]);
    }

    /**
     * What whole quantities within the budget earn on the courses that the plan is made on, each known in advance; at most, so never
     * more than the bound.
     */
    private static double inHindsight(Relaxed relaxed, int[] plan) {
        double[] limits = relaxed.program().limits(Arrays.stream(plan).asDoubleStream().toArray());
        double most = relaxed.hindsight().mean(relaxed.hindsight().best(limits), limits) - relaxed.program().loss(plan);
        return Math.min(relaxed.answer().bound(), most);
    }

    /** What it would cost to turn every order away, mean. */
    private double turnedAway(List<Course> courses) {
        return courses.stream().flatMapToInt(course -> Arrays.stream(course.classes())).mapToObj(request.classes()::get)
                .mapToLong(asked -> asked.loss() * asked.machines()).sum() / (double) courses.size();
    }

    /**
     * The mean of some courses.
     *
     * @param scatter of what searches ended at, which the interval counts in
     */
    static Expected expected(double[] values, double scatter) {
        double mean = Counter.mean(values);
        double variance = Arrays.stream(values).map(value -> (value - mean) * (value - mean)).sum() / Math.max(1, values.length - 1);
        return new Expected(mean, Z_95 * Math.hypot(Math.sqrt(variance / values.length), scatter));
    }
}
