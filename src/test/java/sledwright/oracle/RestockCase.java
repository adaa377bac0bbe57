package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.util.Domain;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.DemandClass;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.OrderLine;
import sledwright.domain.OrdersByMonth;
import sledwright.domain.Part;
import sledwright.domain.PartKind;
import sledwright.domain.Request;
import sledwright.domain.RestockRequest;
import sledwright.domain.SupplyOffer;
import sledwright.generator.time.Deadline;
import sledwright.oracle.EveryMachine.Machine;
import sledwright.restock.DrawnCourses;
import sledwright.restock.RestockPlan;
import sledwright.restock.Restocker;

/** A small stock with what suppliers offer and what is asked for, the same for the same seed, and the best whole purchases for it. */
final class RestockCase {

    private static final int COURSES = 4;
    private static final int MOST_WAYS = 250;
    private static final double HORIZON = 365.0 / 12;
    private static final long SCALE = 100;

    /** The bound is over the builds that the search named, by prices that are means over the courses: others may add so much. */
    private static final double UNNAMED = 0.003;

    /** Units of a part that are alike; those of an offer are as many as are bought. */
    private record Pool(String sku, Condition condition, int day, OptionalInt offer, int units) {
    }

    /** What the courses have in common: orders of a class that are due on the same day. */
    private record Due(int demandClass, int day) {
    }

    private final long seed;
    private final SplittableRandom random;
    private final Catalog catalog;
    private final List<SupplyOffer> offers = new ArrayList<>();
    private final Map<PartKind, Double> lost = new EnumMap<>(PartKind.class);
    private final RestockRequest request;
    private final List<List<Machine>> ways = new ArrayList<>();

    RestockCase(long seed) {
        this.seed = seed;
        random = new SplittableRandom(seed * 77 + 5);
        RandomOrder that = Packs.in(RandomOrder.small(seed));
        catalog = scarce(that.catalog());
        catalog.parts().forEach(this::offer);
        List<DemandClass> classes = that.order().lines().stream().map(this::asked).toList();
        for (PartKind kind : PartKind.values()) {
            lost.put(kind, random.nextInt(4) * 0.1);
        }
        OptionalLong budget = random.nextInt(3) == 0 ? OptionalLong.empty() : OptionalLong.of(random.nextInt(5_000, 200_000));
        request = new RestockRequest("random", classes, 1, new RestockRequest.Purchases(budget, offers), lost, 0.95, COURSES);
    }

    private Catalog scarce(Catalog plenty) {
        Map<String, List<Lot>> lots = new TreeMap<>();
        new TreeMap<>(plenty.lots()).forEach((sku, all) -> lots.put(sku, all.stream().map(lot ->
                lot.with(random.nextInt(3) == 0 ? 0 : Math.min(lot.available(), random.nextInt(1, 5)), lot.breaks())).toList()));
        return plenty.withLots(lots);
    }

    private void offer(Part part) {
        for (int i = random.nextInt(3); i > 0; i--) {
            List<Lot> lots = catalog.lots(part.sku());
            long price = lots.isEmpty() ? 3000 : lots.get(0).breaks().get(0).unitPrice();
            int available = random.nextInt(1, 9);
            offers.add(new SupplyOffer(part.sku(), "Q" + i, random.nextBoolean() ? Condition.NEW : Condition.USED,
                    Math.max(1, price * random.nextInt(30, 130) / 100), available,
                    random.nextInt(3) == 0 ? random.nextInt(1, available + 1) : 1,
                    random.nextInt(3) == 0 ? random.nextInt(0, 12) : 0));
        }
    }

    private DemandClass asked(OrderLine line) {
        Request asked = Request.named(line.name()).withMachines(1).withRequire(line.request().require())
                .withLimit(line.request().limit().withBy(Optional.empty())).withPlatforms(line.request().platforms())
                .withForbid(line.request().forbid());
        OrdersByMonth orders = random.nextBoolean() ? new OrdersByMonth.Poisson(random.nextInt(1, 5))
                : new OrdersByMonth.Months(List.of(random.nextInt(5), random.nextInt(5), random.nextInt(3)));
        boolean margin = random.nextBoolean();
        return new DemandClass(line.name(), asked, orders, margin ? OptionalLong.of(random.nextInt(100, 9000)) : OptionalLong.empty(),
                margin ? OptionalLong.empty() : OptionalLong.of(random.nextInt(20_000, 120_000)), random.nextInt(2) * random.nextInt(1000));
    }

    /** Lists every machine of every class; sleds are left out. */
    boolean isSmall() {
        if (!catalog.enclosures().isEmpty()) {
            return false;
        }
        for (DemandClass asked : request.classes()) {
            Limits any = asked.request().limit().withLeadDays(OptionalInt.empty());
            Map<String, Integer> stock = RandomOrder.stock(catalog, Map.of(), any);
            offers.stream().filter(offer -> any.conditions().isEmpty() || any.conditions().contains(offer.condition()))
                    .forEach(offer -> stock.merge(offer.sku(), offer.available(), Integer::sum));
            try {
                ways.add(EveryMachine.of(catalog, asked.request(), false, stock).stream()
                        .filter(way -> !asked.request().require().populated().onePart() || way.moduleParts() == 1).toList());
            } catch (EveryMachine.TooManyException large) {
                return false;
            }
        }
        return ways.stream().mapToInt(List::size).sum() <= MOST_WAYS;
    }

    void judge(List<String> wrong) {
        RestockPlan plan = Restocker.plan(catalog, request, 0, Deadline.never(), line -> { });
        RestockPlan.Bound bound = plan.bound();
        check(wrong, Math.max(bound.hindsight(), bound.rounded()) <= bound.most() + 1 && bound.inSample() <= bound.hindsight() + 1, bound);
        check(wrong, request.budget().isEmpty() || plan.cost() <= request.budget().getAsLong(), plan.cost());
        plan.buys().forEach(buy -> check(wrong,
                buy.quantity() >= buy.offer().minQuantity() && buy.quantity() <= buy.offer().available(), buy));
        for (int k = 0; k < ways.size(); k++) {
            RestockPlan.ClassOutlook outlook = plan.classes().get(k);
            check(wrong, outlook.impossible().isPresent() == ways.get(k).isEmpty(), outlook);
            long least = ways.get(k).stream().mapToLong(way -> way.beside() + way.parts().entrySet().stream()
                    .mapToLong(part -> worth(part.getKey()) * part.getValue()).sum()).min().orElse(0);
            check(wrong, outlook.cost().orElse(0) == least, outlook + " and the least is " + least);
        }
        double best = best(plan);
        double more = plan.effort().closed() ? UNNAMED * Math.abs(bound.most()) + 1 : Double.POSITIVE_INFINITY;
        check(wrong, best <= bound.most() + more && bound.inSample() <= best + 1, "the best is %s, %s".formatted(best, bound));
    }

    private void check(List<String> wrong, boolean holds, Object what) {
        if (!holds) {
            wrong.add("seed %d: %s".formatted(seed, what));
        }
    }

    /** The least price of the catalogue; where it has none, of the suppliers. */
    private long worth(String sku) {
        OptionalLong own = catalog.lots(sku).stream().flatMap(lot -> lot.breaks().stream())
                .mapToLong(step -> Math.min(step.unitPrice(), step.unitCost().orElse(Long.MAX_VALUE))).min();
        return own.isPresent() ? own.getAsLong() : offers.stream()
                .filter(offer -> offer.sku().equals(sku)).mapToLong(SupplyOffer::unitCost).min().orElse(0);
    }

    private double leftover(String sku, long paid) {
        return Math.min(paid, worth(sku)) * (1 - lost.get(PartKind.of(catalog.part(sku).orElseThrow())));
    }

    private double leftover(SupplyOffer offer) {
        return leftover(offer.sku(), offer.unitCost());
    }

    private List<Pool> pools() {
        List<Pool> pools = new ArrayList<>();
        catalog.lots().values().forEach(lots -> lots.stream().filter(lot -> lot.leadDays() < HORIZON).forEach(lot ->
                pools.add(new Pool(lot.sku(), lot.condition(), lot.leadDays(), OptionalInt.empty(), lot.available()))));
        for (int o = 0; o < offers.size(); o++) {
            if (offers.get(o).leadDays() < HORIZON) {
                pools.add(new Pool(offers.get(o).sku(), offers.get(o).condition(), offers.get(o).leadDays(), OptionalInt.of(o), 0));
            }
        }
        return pools;
    }

    /** What the best purchases earn on the mean course; with what the plan takes customers to pay. */
    private double best(RestockPlan plan) {
        CpModel model = new CpModel();
        LinearExprBuilder aim = LinearExpr.newBuilder();
        List<IntVar> bought = new ArrayList<>();
        LinearExprBuilder spent = LinearExpr.newBuilder();
        for (SupplyOffer offer : offers) {
            Domain some = Domain.fromIntervals(new long[][] {{0, 0}, {offer.minQuantity(), offer.available()}});
            IntVar units = model.newIntVarFromDomain(some, "bought");
            bought.add(units);
            spent.addTerm(units, offer.unitCost());
            aim.addTerm(units, -COURSES * Math.round((offer.unitCost() - leftover(offer)) * SCALE));
        }
        request.budget().ifPresent(most -> model.addLessOrEqual(spent.build(), most));
        double turnedAway = 0;
        for (List<DrawnCourses.Drawn> course : DrawnCourses.of(request, 0)) {
            turnedAway += course.stream().mapToLong(order -> request.classes().get(order.demandClass()).loss()).sum();
            course(model, aim, bought, course, plan);
        }
        model.maximize(aim.build());
        CpSolver solver = new CpSolver();
        solver.getParameters().setNumWorkers(1).setMaxDeterministicTime(10);
        assertThat(solver.solve(model)).as("seed %d", seed).isEqualTo(CpSolverStatus.OPTIMAL);
        return (solver.objectiveValue() / SCALE - turnedAway) / COURSES;
    }

    private void course(CpModel model, LinearExprBuilder aim, List<IntVar> bought, List<DrawnCourses.Drawn> course, RestockPlan plan) {
        Map<Due, Integer> orders = new LinkedHashMap<>();
        for (DrawnCourses.Drawn order : course) {
            OptionalInt patience = request.classes().get(order.demandClass()).request().limit().leadDays();
            double due = patience.isPresent() ? Math.min(HORIZON, order.day() + patience.getAsInt()) : HORIZON;
            orders.merge(new Due(order.demandClass(), (int) due), 1, Integer::sum);
        }
        Map<Pool, LinearExprBuilder> used = new IdentityHashMap<>();
        pools().forEach(pool -> used.put(pool, LinearExpr.newBuilder()));
        orders.forEach((due, count) -> {
            DemandClass asked = request.classes().get(due.demandClass);
            LinearExprBuilder filled = LinearExpr.newBuilder();
            Map<String, LinearExprBuilder> needed = new HashMap<>();
            for (Machine way : ways.get(due.demandClass)) {
                IntVar times = model.newIntVar(0, count, "filled");
                filled.add(times);
                way.parts().forEach((sku, units) -> needed.computeIfAbsent(sku, key -> LinearExpr.newBuilder()).addTerm(times, units));
                aim.addTerm(times, SCALE * (plan.classes().get(due.demandClass).revenue().orElseThrow() + asked.loss() - way.beside()));
            }
            model.addLessOrEqual(filled.build(), count);
            Set<Condition> accepted = asked.request().limit().conditions();
            needed.forEach((sku, units) -> {
                LinearExprBuilder given = LinearExpr.newBuilder();
                used.forEach((pool, taken) -> {
                    if (pool.sku.equals(sku) && (accepted.isEmpty() || accepted.contains(pool.condition)) && pool.day <= due.day) {
                        IntVar some = model.newIntVar(0, 1000, "taken");
                        given.add(some);
                        taken.add(some);
                        double forgone = pool.offer.isPresent() ? leftover(offers.get(pool.offer.getAsInt()))
                                : leftover(sku, Long.MAX_VALUE);
                        aim.addTerm(some, -Math.round(SCALE * forgone));
                    }
                });
                model.addEquality(given.build(), units.build());
            });
        });
        used.forEach((pool, taken) -> {
            if (pool.offer.isPresent()) {
                model.addLessOrEqual(taken.build(), bought.get(pool.offer.getAsInt()));
            } else {
                model.addLessOrEqual(taken.build(), pool.units);
            }
        });
    }
}
