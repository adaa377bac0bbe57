package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import sledwright.domain.Catalog;
import sledwright.domain.DemandClass;
import sledwright.domain.RestockRequest;
import sledwright.domain.SupplyOffer;
import sledwright.generator.time.Deadline;
import sledwright.restock.Counter.Tally;
import sledwright.restock.RestockPlan.Buy;
import sledwright.restock.RestockPlan.ClassOutlook;
import sledwright.restock.RestockPlan.CurvePoint;
import sledwright.restock.RestockPlan.Expected;
import sledwright.restock.RestockPlan.PartOutlook;
import sledwright.rules.Numbers;

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
    /** Refused orders are looked into in so many courses. */
    private static final int REFUSALS_IN = 3;
    /** So many orders in a course, in the mean. */
    private static final double WORTH_TELLING = 0.1;

    private final Shelves shelves;
    private final RestockRequest request;
    private final long seed;
    private final Deadline deadline;
    private final Consumer<String> progress;
    private final Choices choices;
    private final List<Course> made;
    private final List<Course> tried;

    private Program program;
    private Hindsight hindsight;
    private HindsightRelaxation relaxation;
    private HindsightRelaxation.Answer relaxed;

    private Restocker(Catalog catalog, RestockRequest request, long seed, Deadline deadline, Consumer<String> progress) {
        this.request = request;
        this.seed = seed;
        this.deadline = deadline;
        this.progress = progress;
        shelves = new Shelves(catalog, request);
        progress.accept("searching builds for %d classes of orders".formatted(request.classes().size()));
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
        boolean closed = false;
        List<Course> few = made.subList(0, Math.min(made.size(), ROUGHLY));
        for (int again = 0; !closed && again < MOST_REOPENED && !deadline.isOver(); again++) {
            HindsightRelaxation.Answer rough = relax(ROUGH, few);
            // Both, always: what the one finds the other may miss.
            closed = isClosed(rough) & !findMore(rough);
        }
        relax(TOLERANCE, made);
        closed = isClosed(relaxed);
        for (int again = 0; !closed && again < MOST_FINISHED && !deadline.isOver(); again++) {
            relax(TOLERANCE, made);
            closed = isClosed(relaxed);
        }
        progress.accept("trying whole quantities");
        Counters counters = new Counters(program, shelves, made);
        Plans plans = new Plans(program, hindsight, relaxation, relaxed, counters, made, deadline);
        Plans.Stocked chosen = plans.find(request.budget(), stocked -> progress.accept("a plan of %s within %s".formatted(
                shelves.catalog().amount(plans.cost(stocked.bought())), shelves.catalog().amount(stocked.budget()))));
        int[] plan = chosen.bought();
        Tally with = chosen.counter().serve(program, plan, tried);
        Plans.Stocked nothing = plans.all().get(0);
        Tally without = nothing.counter().serve(program, nothing.bought(), tried);
        double offset = turnedAway(made);
        double[] prices = plans.pricesAt(plan);
        int[] near = plans.near(request.budget());
        Expected heldBack = expected(counters.at(prices, true).serve(program, plan, tried).margins());
        progress.accept("what each part is worth");
        List<PartOutlook> parts = parts(plan, with, prices);
        double[] differences = new double[tried.size()];
        Arrays.setAll(differences, s -> with.margins()[s] - without.margins()[s]);
        return new RestockPlan(request, buys(plan, with), expected(with.margins()), expected(without.margins()), expected(differences),
                relaxed.bound() - offset, inHindsight(near) - offset, plans.atItsCounter(near), inHindsight(plan) - offset,
                chosen.earns(), closed, choices.size(), made.size(), deadline.isOver(), outlook(with, without), parts, curve(plans),
                uses(with), heldBack);
    }

    private List<CurvePoint> curve(Plans plans) {
        return plans.all().stream().map(stocked -> new CurvePoint(stocked.budget(), plans.cost(stocked.bought()),
                expected(stocked.counter().margins(program, stocked.bought(), tried)))).toList();
    }

    /** What the relaxation knew of fewer builds serves on. */
    private HindsightRelaxation.Answer relax(double tolerance, List<Course> courses) {
        Program earlier = program;
        program = new Program(shelves, choices);
        List<double[]> known = earlier == null ? List.of()
                : hindsight.winners().stream().map(prices -> program.carried(earlier, prices)).toList();
        List<double[]> seen = earlier == null ? List.of()
                : relaxation.seen().stream().map(bought -> program.carriedPurchases(earlier, bought)).toList();
        double[] start = earlier == null ? new double[program.purchases().size()] : program.carriedPurchases(earlier, relaxed.bought());
        hindsight = new Hindsight(program, courses, known);
        relaxation = new HindsightRelaxation(program, hindsight, seed, deadline);
        relaxation.recall(seen);
        relaxed = relaxation.solve(request.budget(), start, tolerance, MOST_ROUNDS, progress);
        progress.accept("bound over %d builds on %d courses after %s".formatted(choices.size(), courses.size(),
                Numbers.counted(relaxed.rounds(), "round", "rounds")));
        return relaxed;
    }

    /** Whether the search knows no further build that would earn more than any known one at these shadow prices. */
    private boolean isClosed(HindsightRelaxation.Answer relaxed) {
        boolean[] open = new boolean[request.classes().size()];
        choices.forEach(k -> {
            if (!choices.of(k).isEmpty()) {
                Map<String, Double> scarce = program.scarcity(k, relaxed.prices());
                Optional<Choices.Found> found = choices.seek(k, sku -> Math.round(shelves.leftover(sku) + scarce.getOrDefault(sku, 0.0)));
                open[k] = found.isEmpty() || found.get().isNew() && program.gain(found.get().choice())
                        - found.get().choice().parts(sku -> scarce.getOrDefault(sku, 0.0)) > 0;
            }
        });
        return noneOf(open);
    }

    private static boolean noneOf(boolean[] flags) {
        return IntStream.range(0, flags.length).noneMatch(i -> flags[i]);
    }

    /** Searches in what is left when orders are turned away; whether there was a build after all that nobody knew. */
    private boolean findMore(HindsightRelaxation.Answer relaxed) {
        Counters counters = new Counters(program, shelves, made);
        Plans plans = new Plans(program, hindsight, relaxation, relaxed, counters, made, deadline);
        int[] plan = plans.near(request.budget());
        Counter counter = counters.best(counters.around(relaxed.prices()), plan);
        List<Map<Integer, Map<String, Integer>>> refusals = made.subList(0, Math.min(made.size(), REFUSALS_IN)).stream()
                .map(course -> counter.firstRefusals(program, plan, course)).toList();
        boolean[] found = new boolean[request.classes().size()];
        choices.forEach(k -> refusals.stream().filter(of -> of.containsKey(k) && choices.impossible(k).isEmpty() && !deadline.isOver())
                .forEach(of -> found[k] |= choices.seekIn(k, of.get(k))));
        return !noneOf(found);
    }

    /** What whole quantities earn on the courses that the plan is made on, each known in advance; at most. */
    private double inHindsight(int[] plan) {
        double[] limits = program.limits(Arrays.stream(plan).asDoubleStream().toArray());
        return hindsight.mean(hindsight.best(limits), limits) - program.loss(plan);
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

    private List<ClassOutlook> outlook(Tally with, Tally without) {
        List<ClassOutlook> outlook = new ArrayList<>();
        for (int k = 0; k < request.classes().size(); k++) {
            double asked = Math.max(1, with.asked()[k]);
            double filled = with.served()[k] / asked;
            outlook.add(new ClassOutlook(request.classes().get(k).name(), (double) with.asked()[k] / tried.size(), filled,
                    without.served()[k] / asked, halfWidth(with, k), choices.revenue(k), choices.cheapest(k), choices.impossible(k)));
        }
        return outlook;
    }

    /** Of a ratio of two means: the courses are independent, the orders of one are not. */
    private double halfWidth(Tally tally, int k) {
        double ratio = tally.served()[k] / Math.max(1.0, tally.asked()[k]);
        double[] residuals = new double[tried.size()];
        Arrays.setAll(residuals, s -> tally.servedByCourse()[s][k] - ratio * tally.askedByCourse()[s][k]);
        double mean = Math.max(1e-9, (double) tally.asked()[k] / tried.size());
        return expected(residuals).halfWidth() / mean;
    }

    private List<Buy> buys(int[] plan, Tally with) {
        List<Buy> buys = new ArrayList<>();
        for (int o = 0; o < plan.length; o++) {
            if (plan[o] > 0) {
                SupplyOffer offer = program.purchases().get(o).offer();
                buys.add(new Buy(offer, plan[o], used(offer.sku(), plan, with), why(offer.sku(), with)));
            }
        }
        buys.sort(Comparator.comparingLong(Buy::cost).reversed().thenComparing(buy -> buy.offer().sku()));
        return buys;
    }

    private List<RestockPlan.ClassUse> uses(Tally with) {
        List<RestockPlan.ClassUse> uses = new ArrayList<>();
        for (int k = 0; k < request.classes().size(); k++) {
            int of = k;
            with.used().get(k).entrySet().stream().max(Map.Entry.comparingByValue())
                    .ifPresent(most -> uses.add(new RestockPlan.ClassUse(of, most.getKey().needed())));
        }
        return uses;
    }

    private double used(String sku, int[] plan, Tally tally) {
        return Math.max(0, shelves.standing(sku) + bought(sku, plan) - tally.leftover().getOrDefault(sku, (double) shelves.standing(sku)));
    }

    private int bought(String sku, int[] plan) {
        int bought = 0;
        for (int o = 0; o < plan.length; o++) {
            bought += program.purchases().get(o).offer().sku().equals(sku) ? plan[o] : 0;
        }
        return bought;
    }

    private String why(String sku, Tally with) {
        Map<String, Double> orders = new TreeMap<>();
        for (int k = 0; k < request.classes().size(); k++) {
            DemandClass asked = request.classes().get(k);
            with.used().get(k).forEach((choice, count) -> {
                if (count > 0 && choice.needed().containsKey(sku)) {
                    orders.merge(asked.name(), (double) count / tried.size(), Double::sum);
                }
            });
        }
        int standing = shelves.standing(sku);
        return "%s; %s.".formatted(standing == 0 ? "None is there"
                        : "The %d there fall short in %.0f %% of courses".formatted(standing, 100 * with.needed().getOrDefault(sku, 0.0)),
                orders.entrySet().stream().filter(entry -> entry.getValue() >= WORTH_TELLING)
                        .sorted(Map.Entry.<String, Double>comparingByValue().reversed().thenComparing(Map.Entry.comparingByKey())).limit(3)
                        .map(entry -> "%.1f orders of %s".formatted(entry.getValue(), entry.getKey()))
                        .reduce((one, other) -> one + ", " + other).map(all -> "goes into " + all)
                        .orElse("goes into hardly any order that is expected"));
    }

    private List<PartOutlook> parts(int[] plan, Tally with, double[] rowPrices) {
        Set<String> skus = new LinkedHashSet<>();
        shelves.standing().keySet().forEach(pool -> skus.add(pool.sku()));
        shelves.offers().forEach(offer -> skus.add(offer.sku()));
        Map<String, OptionalLong> most = new Ceilings(shelves, choices, sku -> Math.round(Math.max(shelves.worth(sku).orElse(0),
                oneMore(sku, rowPrices))), deadline).of(List.copyOf(skus));
        List<PartOutlook> parts = new ArrayList<>();
        for (String sku : skus) {
            double used = used(sku, plan, with);
            int bought = bought(sku, plan);
            long worth = shelves.worth(sku).orElse(0);
            double left = shelves.standing(sku) + bought - used;
            parts.add(new PartOutlook(sku, shelves.standing(sku), bought, used, worth, oneMore(sku, rowPrices),
                    left * (worth - shelves.leftover(sku)), most(sku, most.get(sku), used > 0, plan, rowPrices)));
        }
        return parts;
    }

    /** What one more unit adds: its worth at the end and its scarcity. */
    private double oneMore(String sku, double[] rowPrices) {
        return shelves.leftover(sku) + program.scarcity(sku, rowPrices);
    }

    /** A price is worth paying, too, that one more unit brings in, or that the plan pays. */
    private OptionalLong most(String sku, OptionalLong ceiling, boolean isUsed, int[] plan, double[] rowPrices) {
        LongStream.Builder prices = LongStream.builder();
        ceiling.ifPresent(prices);
        if (isUsed) {
            prices.add(Math.round(oneMore(sku, rowPrices)));
        }
        for (int o = 0; o < plan.length; o++) {
            SupplyOffer offer = program.purchases().get(o).offer();
            if (plan[o] > 0 && offer.sku().equals(sku)) {
                prices.add(offer.unitCost());
            }
        }
        return prices.build().max();
    }
}
