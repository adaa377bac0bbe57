package sledwright.restock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import com.google.ortools.Loader;
import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPObjective;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.CoolingKit;
import sledwright.domain.DemandClass;
import sledwright.domain.OrdersByMonth;
import sledwright.domain.PartKind;
import sledwright.domain.RestockRequest;
import sledwright.domain.SupplyOffer;
import sledwright.generator.time.Deadline;
import sledwright.samples.Samples;
import sledwright.samples.Variations;

class RestockerTest {

    private static final Catalog STOCKED = SmallShop.with(Samples.lot("R16", "M1", 100_000, 2000), Samples.lot("R32", "M2", 100_000, 5000));

    /** Snyder and Shen, Example 4.3, in cents: with one part that is short and one class the plan is the newsvendor's quantity. */
    @Test
    void onePartAndOneClassIsTheNewsvendor() {
        RestockRequest request = new RestockRequest("newsvendor", List.of(SmallShop.asking("all", new OrdersByMonth.Normal(50, 8), 16, 70, 0)), 1,
                new RestockRequest.Purchases(OptionalLong.empty(), List.of(SmallShop.offer("BOX", 100, 1000, 1, 0))), Map.of(PartKind.PLATFORMS, 0.18), 0.95, 2000);
        RestockPlan plan = Restocker.plan(STOCKED, request, 0, Deadline.never(), line -> { });
        assertThat(plan.buys()).singleElement().satisfies(buy -> assertThat((double) buy.quantity()).isCloseTo(56.60395592743389, within(2.0)));
        // What is earned is the margin on all demand less the newsvendor's cost.
        assertThat(plan.earned().with().mean()).isCloseTo(50 * 70 - 199.76, within(2 * plan.earned().with().halfWidth()));
    }

    @Test
    void nothingIsBoughtThatEarnsLessThanItLoses() {
        RestockRequest request = SmallShop.request(List.of(SmallShop.asking("all", new OrdersByMonth.Poisson(5), 16, 70, 0)), OptionalLong.empty(),
                0, 200, SmallShop.offer("R16", 2500, 100, 1, 0));
        RestockPlan plan = Restocker.plan(STOCKED, request, 0, Deadline.never(), line -> { });
        assertThat(plan.buys()).isEmpty();
        assertThat(plan.classes().get(0).filled().with()).isZero();
    }

    @Test
    void leastQuantitiesAndTheBudgetAreKept() {
        RestockRequest request = two(OptionalLong.of(60_000), 300, 0);
        RestockPlan plan = SmallShop.plan(request);
        assertThat(plan.cost()).isPositive().isLessThanOrEqualTo(60_000);
        assertThat(plan.buys()).allSatisfy(buy -> assertThat(buy.quantity()).isBetween(buy.offer().minQuantity(), buy.offer().available()));
    }

    private static RestockRequest two(OptionalLong budget, int samples, int leadDays) {
        List<DemandClass> classes = List.of(SmallShop.asking("small", new OrdersByMonth.Poisson(3), 16, 3000, 100),
                SmallShop.asking("large", new OrdersByMonth.Months(List.of(1, 3, 2)), 64, 9000, 500));
        return SmallShop.request(classes, budget, 0.1, samples, SmallShop.offer("BOX", 10_000, 8, 1, leadDays),
                SmallShop.offer("R16", 2000, 12, 4, 0), SmallShop.offer("R32", 4500, 8, 2, 0));
    }

    /** Every plan of a small case, served as orders come. */
    @Test
    void noPlanOfASmallCaseIsMuchBetterAndNoneBeatsTheBound() {
        RestockRequest request = two(OptionalLong.of(90_000), 100, 0);
        RestockPlan plan = SmallShop.plan(request);
        Shelves shelves = new Shelves(SmallShop.CATALOG, request);
        Choices choices = new Choices(shelves, Deadline.never());
        Program program = new Program(shelves, choices);
        List<Course> courses = Courses.draw(request, 100, 1);
        Counter counter = new Counters(new Racks(program, shelves, courses), courses).at(new double[program.limits(new double[0]).length], 0);
        double best = Double.NEGATIVE_INFINITY;
        for (int box = 0; box <= 8; box++) {
            for (int small = 0; small <= 12; small = Math.max(4, small + 1)) {
                for (int large = 0; large <= 8; large = Math.max(2, large + 1)) {
                    if (box * 10_000 + small * 2000 + large * 4500 <= 90_000) {
                        best = Math.max(best, Arrays.stream(counter.serve(new int[] {box, small, large}, courses).margins()).average().orElseThrow());
                    }
                }
            }
        }
        assertThat(plan.bound().inSample()).isGreaterThanOrEqualTo(best - 0.01 * Math.abs(best));
        assertThat(plan.bound().most()).isGreaterThanOrEqualTo(best - 1e-6).isGreaterThanOrEqualTo(plan.bound().hindsight() - 1e-6);
    }

    /** The whole program over all courses at once, by another solver. */
    @ParameterizedTest
    @ValueSource(ints = {0, 12})
    void boundIsThatOfTheWholeProgram(int leadDays) {
        RestockRequest request = two(OptionalLong.of(70_000), 40, leadDays);
        assertBoundIsThatOfTheWholeProgram(SmallShop.CATALOG, request);
    }

    /** Modules stand there that are worth more than what suppliers ask for some. */
    @Test
    void boundCountsWhatCheapPurchasesSpare() {
        RestockRequest request = Variations.offers(two(OptionalLong.of(70_000), 40, 0), List.of(SmallShop.offer("BOX", 10_000, 8, 1, 0), SmallShop.offer("R16", 1500, 6, 1, 0),
                SmallShop.offer("R16", 700, 3, 1, 0), SmallShop.offer("R32", 4500, 8, 2, 0)));
        Catalog shop = SmallShop.with(Samples.lot("R16", "M1", 4, 2000), Samples.lot("R32", "M2", 0, 5000));
        assertThat(new Program(new Shelves(shop, request), new Choices(new Shelves(shop, request), Deadline.never())).bargains()).hasSize(3);
        assertThat(assertBoundIsThatOfTheWholeProgram(shop, request))
                .anySatisfy(line -> assertThat(line).matches("round 10: \\d+\\.\\d+ % of the bound reached"));
    }

    /** All who come wait for the shop's own modules, too, which are under way for longer than what is cheaper. */
    @Test
    void whatIsCheaperIsUsedFirstWhereAllWaitForTheRest() {
        Catalog shop = SmallShop.with(Samples.lot("BOX", "B1", 100, 10_000), Samples.lot("R16", "M1", 100, 20, Condition.NEW, Map.of(1, 2000L)));
        RestockRequest request = SmallShop.request(List.of(SmallShop.asking("web", new OrdersByMonth.Months(List.of(6)), 16, 6000, 0)),
                OptionalLong.empty(), 0, 20, SmallShop.offer("R16", 700, 50, 1, 1));
        assertThat(Restocker.plan(shop, request, 0, Deadline.never(), line -> { }).buys()).extracting(RestockPlan.Buy::quantity).containsExactly(6);
    }

    /** @return what is reported on the way */
    private static List<String> assertBoundIsThatOfTheWholeProgram(Catalog shop, RestockRequest request) {
        Shelves shelves = new Shelves(shop, request);
        Program program = new Program(shelves, new Choices(shelves, Deadline.never()));
        List<Course> courses = Courses.draw(request, 40, 1);
        List<String> told = new ArrayList<>();
        HindsightRelaxation.Answer answer = new HindsightRelaxation(program, new Hindsight(program, courses, List.of()), 0, Deadline.never())
                .solve(request.budget(), new double[program.purchases().size()], 1e-4, 200, told::add);
        double whole = whole(program, courses, 70_000);
        assertThat(answer.bound()).isCloseTo(whole, within(2e-3 * whole)).isGreaterThanOrEqualTo(whole - 1e-3);
        return told;
    }

    private static double whole(Program program, List<Course> courses, double budget) {
        Loader.loadNativeLibraries();
        MPSolver solver = MPSolver.createSolver("GLOP");
        MPObjective aim = solver.objective();
        aim.setMaximization();
        List<MPVariable> bought = new ArrayList<>();
        MPConstraint spent = solver.makeConstraint(Double.NEGATIVE_INFINITY, budget);
        for (Program.Purchase purchase : program.purchases()) {
            MPVariable units = solver.makeNumVar(0, purchase.offer().available(), "");
            aim.setCoefficient(units, -purchase.loss());
            spent.setCoefficient(units, purchase.offer().unitCost());
            bought.add(units);
        }
        double[] standing = program.limits(new double[0]);
        for (Course course : courses) {
            int[] demand = program.demand(course);
            MPConstraint[] rows = new MPConstraint[standing.length];
            for (int i = 0; i < rows.length; i++) {
                rows[i] = solver.makeConstraint(Double.NEGATIVE_INFINITY, standing[i]);
            }
            for (int o = 0; o < bought.size(); o++) {
                for (int row : program.purchases().get(o).rows()) {
                    rows[row].setCoefficient(bought.get(o), -1);
                }
            }
            for (Program.Bargain bargain : program.bargains()) {
                MPVariable spared = solver.makeNumVar(0, Double.POSITIVE_INFINITY, "");
                aim.setCoefficient(spared, bargain.spare() / courses.size());
                rows[bargain.bought()].setCoefficient(spared, 1);
                rows[bargain.taken()].setCoefficient(spared, 1);
            }
            for (int t = 0; t < demand.length; t++) {
                Program.Kind kind = program.kinds().get(t);
                MPConstraint orders = solver.makeConstraint(Double.NEGATIVE_INFINITY, demand[t]);
                for (int b = 0; b < kind.gain().length; b++) {
                    MPVariable filled = solver.makeNumVar(0, Double.POSITIVE_INFINITY, "");
                    aim.setCoefficient(filled, kind.gain()[b] / courses.size());
                    orders.setCoefficient(filled, 1);
                    for (int i = 0; i < kind.rows()[b].length; i++) {
                        rows[kind.rows()[b][i]].setCoefficient(filled, kind.units()[b][i]);
                    }
                }
            }
        }
        assertThat(solver.solve()).isEqualTo(MPSolver.ResultStatus.OPTIMAL);
        return aim.value();
    }

    @Test
    void whatArrivesAfterTheHorizonDoesNotCount() {
        RestockPlan inTime = SmallShop.plan(two(OptionalLong.empty(), 200, 29));
        RestockPlan late = SmallShop.plan(two(OptionalLong.empty(), 200, 31));
        assertThat(inTime.buys()).anySatisfy(buy -> assertThat(buy.offer().sku()).isEqualTo("BOX"));
        assertThat(late.buys()).isEmpty();
    }

    @Test
    void theHastyAreNotServedFromWhatComesLater() {
        RestockRequest patient = two(OptionalLong.empty(), 300, 15);
        List<DemandClass> hasty = patient.classes().stream().map(asked -> new DemandClass(asked.name(),
                asked.request().withLimit(Samples.limit().leadDays(0).make()), asked.orders(), asked.margin(), asked.accepted(), asked.loss())).toList();
        double waited = SmallShop.plan(patient).classes().get(0).filled().with();
        double left = SmallShop.plan(Variations.classes(patient, hasty)).classes().get(0).filled().with();
        assertThat(left).isLessThan(0.6).isLessThan(waited);
    }

    @Test
    void moreMoneyEarnsNoLess() {
        RestockPlan plan = SmallShop.plan(two(OptionalLong.of(60_000), 300, 0));
        double before = Double.NEGATIVE_INFINITY;
        for (RestockPlan.CurvePoint point : plan.earned().curve()) {
            assertThat(point.spent()).isLessThanOrEqualTo(point.budget());
            assertThat(point.margin().mean()).isGreaterThanOrEqualTo(before - 2 * point.margin().halfWidth());
            before = point.margin().mean();
        }
        assertThat(plan.earned().curve().get(0).margin().mean()).isEqualTo(plan.earned().without().mean());
    }

    @Test
    void anAbsurdPriceIsNotPaid() {
        RestockRequest usual = SmallShop.request(List.of(SmallShop.asking("all", new OrdersByMonth.Poisson(5), 16, 3000, 0)), OptionalLong.empty(), 0.1, 200,
                SmallShop.offer("BOX", 10_000, 50, 1, 0));
        Catalog shop = SmallShop.with(Samples.lot("BOX", "B1", 1, 12_000), Samples.lot("R16", "M1", 1000, 2000));
        assertThat(Restocker.plan(shop, usual, 0, Deadline.never(), line -> { }).buys()).isNotEmpty();
        RestockRequest absurd = Variations.offers(usual, List.of(SmallShop.offer("BOX", 100_000, 50, 1, 0)));
        assertThat(Restocker.plan(shop, absurd, 0, Deadline.never(), line -> { }).buys()).isEmpty();
    }

    @Test
    void aClassThatDoublesIsBoughtFor() {
        RestockRequest usual = Variations.offers(two(OptionalLong.empty(), 300, 0), List.of(SmallShop.offer("BOX", 10_000, 80, 1, 0),
                SmallShop.offer("R16", 2000, 80, 4, 0), SmallShop.offer("R32", 4500, 80, 2, 0)));
        DemandClass large = usual.classes().get(1);
        RestockRequest doubled = Variations.classes(usual, List.of(usual.classes().get(0), new DemandClass(large.name(), large.request(),
                new OrdersByMonth.Months(List.of(2, 6, 4)), large.margin(), large.accepted(), large.loss())));
        assertThat(SmallShop.plan(doubled).cost()).isGreaterThan(SmallShop.plan(usual).cost());
    }

    @Test
    void theSupplierWhoAsksTheAbsurdIsPassedOver() {
        RestockRequest usual = SmallShop.request(List.of(SmallShop.asking("all", new OrdersByMonth.Poisson(5), 16, 3000, 0)), OptionalLong.empty(), 0.1, 200,
                SmallShop.offer("BOX", 10_000, 50, 1, 0), new SupplyOffer("BOX", "Reed", Condition.USED, 9_000, 50, 1, 0));
        Catalog shop = SmallShop.with(Samples.lot("R16", "M1", 1000, 2000));
        assertThat(Restocker.plan(shop, usual, 0, Deadline.never(), line -> { }).buys()).isNotEmpty()
                .allSatisfy(buy -> assertThat(buy.offer().supplier()).isEqualTo("Reed"));
        RestockRequest absurd = Variations.offers(usual, List.of(usual.offers().get(0), new SupplyOffer("BOX", "Reed", Condition.USED, 900_000, 50, 1, 0)));
        assertThat(Restocker.plan(shop, absurd, 0, Deadline.never(), line -> { }).buys()).isNotEmpty()
                .allSatisfy(buy -> assertThat(buy.offer().supplier()).isEqualTo("Quarry"));
    }

    @Test
    void halfTheMoneyBuysLessAndEarnsLessButNothingElseChanges() {
        RestockRequest usual = two(OptionalLong.of(90_000), 300, 0);
        RestockPlan whole = SmallShop.plan(usual);
        RestockPlan half = SmallShop.plan(Variations.budget(usual, OptionalLong.of(45_000)));
        assertThat(half.cost()).isLessThanOrEqualTo(45_000);
        assertThat(half.earned().with().mean()).isLessThan(whole.earned().with().mean() - whole.earned().with().halfWidth());
        assertThat(half.earned().without()).isEqualTo(whole.earned().without());
        assertThat(half.earned().with().mean()).isCloseTo(whole.earned().curve().get(2).margin().mean(), within(0.02 * whole.earned().with().mean()));
    }

    /** One order in a hundred months that is worth a fortune: nearly all courses have none, and say nothing of what it takes. */
    @Test
    void rareOrdersAreBoughtFor() {
        RestockRequest request = SmallShop.request(List.of(SmallShop.asking("rare", new OrdersByMonth.Poisson(0.01), 16, 100_000_000, 0)), OptionalLong.empty(), 0.1, 500,
                SmallShop.offer("BOX", 10_000, 80, 1, 0), SmallShop.offer("R16", 2000, 1200, 1, 0));
        RestockPlan plan = SmallShop.plan(request);
        assertThat(plan.buys()).isNotEmpty()
                .allSatisfy(buy -> assertThat(buy.why()).isEqualTo("None is there; goes into hardly any order that is expected."));
        assertThat(plan.bound().gap()).isLessThan(0.001);
    }

    @Test
    void aClassThatNothingCanServeIsExplained() {
        RestockRequest request = SmallShop.request(List.of(SmallShop.asking("huge", new OrdersByMonth.Poisson(2), 100_000, 5000, 0)), OptionalLong.empty(),
                0.1, 50, SmallShop.offer("BOX", 10_000, 8, 1, 0), SmallShop.offer("R16", 2000, 12, 4, 0));
        RestockPlan plan = SmallShop.plan(request);
        assertThat(plan.buys()).isEmpty();
        assertThat(plan.classes().get(0).impossible()).hasValueSatisfying(why -> assertThat(why.conflicts()).isNotEmpty());
    }

    @Test
    void theSameSeedGivesTheSamePlan() {
        RestockRequest request = two(OptionalLong.of(90_000), 100, 0);
        assertThat(SmallShop.plan(request)).usingRecursiveComparison().isEqualTo(SmallShop.plan(request));
    }

    /** Where a kit covers slots on one board that it leaves free on another, it is the same kit. */
    @Test
    void aKitOfTwoBoardsIsWorthWhatItSavesOnEither() {
        CoolingKit covering = new CoolingKit("TALL", "tall heat sink", 150, List.of("C1A"));
        Catalog shop = Samples.catalog(List.of(Samples.platform().sku("BOX").make(), Samples.platform().sku("ANVIL").cooling(covering).make()),
                List.of(Samples.P10), List.of(Samples.R16), Samples.lot("BOX", "B1", 100, 12_000), Samples.lot("R16", "M1", 1000, 2000), Samples.lot("P10", "C1", 1000, 5000),
                Samples.lot("LOW", "H1", 1000, 1000), Samples.lot("TALL", "H2", 100, 1500), Samples.lot("PAIR", "W1", 1000, 4000));
        RestockRequest request = SmallShop.request(List.of(SmallShop.asking("all", new OrdersByMonth.Poisson(5), 16, 3000, 0)), OptionalLong.empty(), 0.1, 100);
        RestockPlan plan = Restocker.plan(shop, request, 0, Deadline.never(), line -> { });
        assertThat(plan.parts()).filteredOn(part -> part.sku().equals("TALL")).singleElement().satisfies(part -> assertThat(part.value().mostPrice()).hasValue(1000));
    }

    @Test
    void whatDoesNotSellIsDead() {
        Catalog shop = SmallShop.with(Samples.lot("BOX", "B1", 100, 12_000), Samples.lot("R16", "M1", 1000, 2000), Samples.lot("R32", "M2", 10, 50_000));
        RestockRequest request = SmallShop.request(List.of(SmallShop.asking("all", new OrdersByMonth.Poisson(5), 16, 3000, 0)), OptionalLong.empty(), 0.1, 100);
        RestockPlan plan = Restocker.plan(shop, request, 0, Deadline.never(), line -> { });
        assertThat(plan.dead()).singleElement().satisfies(part -> {
            assertThat(part.sku()).isEqualTo("R32");
            // One of 16 GB does at 20.00; one of 32 GB is as good a way to at the same price.
            assertThat(part.value().mostPrice()).hasValue(2000);
        });
    }
}
