package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.LongFunction;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.OrderOutcome;
import sledwright.planner.order.OrderPlanner;

/**
 * Orders too large to be proved in a moment, against an outside solver, CP-SAT of OR-Tools, which need not come to an end either: no bound of one is
 * above an order of the other. More seeds by {@code -Dsledwright.seeds=200}, other ones by {@code -Dsledwright.seed=100001}.
 */
class LargeOrdersAgainstCpSatTest {

    private static final int SEEDS = 6;
    private static final int FEW_SEEDS = 3;
    private static final int PASSED = 4;
    private static final CpSatOrder.Effort TIME = CpSatOrder.Effort.deterministic(1);
    private static final double CLOSE = 0.01;

    /** Both choose among every valid machine. */
    @Test
    void noBoundIsAboveAnOrderOfTheOther() {
        compare(Seeds.chosen(SEEDS), RandomOrder::large);
    }

    /** So many lines that machines found for one are given to others. */
    @Test
    void noBoundOfVeryManyLinesIsAboveAnOrderOfTheOther() {
        // Those of the first seeds cannot be delivered.
        compare(Seeds.chosen(FEW_SEEDS).map(seed -> seed + PASSED), RandomOrder::broad);
    }

    private static void compare(LongStream seeds, LongFunction<RandomOrder> orders) {
        List<String> wrong = new ArrayList<>();
        List<String> told = new ArrayList<>();
        seeds.forEach(seed -> {
            RandomOrder that = orders.apply(seed);
            try {
                CpSatOrder.Answer answer = CpSatOrder.cheapest(that, OrderAgainstCpSatTest.machines(that), TIME);
                OrderOutcome outcome = plan(that);
                wrong.addAll(wrong(that, outcome, answer));
                told.add(told(that, outcome, answer));
                if (answer.impossible() ? outcome.missing() == 0 : outcome.missing() == 0 && answer.bound() / CpSatOrder.SCALE > outcome.best() + CLOSE) {
                    wrong.add("seed %d: best %s, the solver's bound %s".formatted(seed, outcome.best(), answer.bound() / CpSatOrder.SCALE));
                }
            } catch (EveryMachine.TooManyException large) {
                told.add("seed %d is too large to list".formatted(seed));
            }
        });
        tell(told);
        assertThat(wrong).isEmpty();
    }

    /** The solver chooses among some machines only, so that its orders count but not its bound. */
    @Test
    void noOrderOfSomeMachinesIsBelowTheBound() {
        List<String> wrong = new ArrayList<>();
        List<String> told = new ArrayList<>();
        Seeds.chosen(SEEDS).forEach(seed -> {
            RandomOrder that = RandomOrder.vast(seed);
            OrderOutcome outcome = plan(that);
            OrderPace pace = new OrderPace(that.catalog(), that.order(), Duration.ofSeconds(1));
            pace.add(outcome.lines().stream().map(line -> line.fills().stream().map(OrderOutcome.Fill::build).toList()).toList());
            CpSatOrder.Answer answer = pace.cheapest(TIME);
            wrong.addAll(wrong(that, outcome, answer));
            told.add(told(that, outcome, answer));
        });
        tell(told);
        assertThat(wrong).isEmpty();
    }

    private static OrderOutcome plan(RandomOrder that) {
        return new OrderPlanner(that.catalog(), that.seed()).plan(that.order(), Deadline.in(Duration.ofSeconds(2)), progress -> { });
    }

    private static List<String> wrong(RandomOrder that, OrderOutcome outcome, CpSatOrder.Answer answer) {
        List<String> wrong = new ArrayList<>();
        String unsound = OrderReading.wrong(outcome, that.order(), that.catalog());
        if (!unsound.isEmpty()) {
            wrong.add("seed %d: %s".formatted(that.seed(), unsound));
        }
        if (answer.value() != null && outcome.bound() > answer.value() / (double) CpSatOrder.SCALE + CLOSE) {
            wrong.add("seed %d: bound %s above an order of %s".formatted(that.seed(), outcome.bound(), answer.value() / (double) CpSatOrder.SCALE));
        }
        return wrong;
    }

    private static String told(RandomOrder that, OrderOutcome outcome, CpSatOrder.Answer answer) {
        return "seed %d: %d machines, %s, %d missing, best %s, bound %s; the solver's %s".formatted(that.seed(), that.order().machines(),
                outcome.status().label(), outcome.missing(), outcome.best(), outcome.bound(), answer);
    }

    private static void tell(List<String> told) {
        if (Boolean.getBoolean("sledwright.tell")) {
            told.forEach(System.err::println);
        }
    }
}
