package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.LongSupplier;
import org.junit.jupiter.api.Test;
import sledwright.domain.OrderLine;
import sledwright.generator.time.Deadline;
import sledwright.oracle.EveryMachine.Machine;
import sledwright.planner.order.OrderOutcome;
import sledwright.planner.order.OrderPlanner;
import sledwright.planner.order.OrderStatus;

/**
 * Orders against an outside solver, CP-SAT of OR-Tools, which chooses among every valid machine of every line. More seeds by
 * {@code -Dsledwright.seeds=2000}, other ones by {@code -Dsledwright.seed=100001}; {@code -Dsledwright.tell=true} names every order that could be better;
 * {@code -Dsledwright.busy=true} counts the time that the processor has had for the planner, beside other work.
 */
class OrderAgainstCpSatTest {

    private static final int SEEDS = 100;
    private static final int PACKED_SEEDS = 8;
    private static final CpSatOrder.Effort TIME = CpSatOrder.Effort.deterministic(3);
    /** Nearly all small orders are answered long before. */
    private static final Duration LIMIT = Duration.ofSeconds(5);
    private static final double CLOSE = 0.01;

    /** Most orders that may be dearer than the least, or deliver less than the most, without claiming otherwise. */
    private static final double MISSED = 0.01;

    /** Fewest of the orders that are proved, short ones too. */
    private static final double PROVED = 0.9;

    /**
     * How an order compares.
     *
     * @param wrong  what it claims and must not; empty for nothing
     * @param missed what could be better without its claiming otherwise; empty for nothing
     * @param proved whether it claims that nothing is better
     */
    record Verdict(String wrong, String missed, OrderStatus status, boolean proved) {

        static Verdict of(String wrong, String missed, OrderOutcome outcome) {
            return new Verdict(wrong, missed, outcome.status(), outcome.proof().ended() == OrderOutcome.End.PROVED);
        }
    }

    /** The solver could not decide. */
    static final class UndecidedException extends RuntimeException {
    }

    @Test
    void theOptimumIsFoundAndProved() {
        OrderVerdicts all = new OrderVerdicts(SEEDS, RandomOrder::small, OrderAgainstCpSatTest::shown);
        assertThat(all.wrong).as("%s", all).isEmpty();
        assertThat(all.missed.size()).as("%s", all).isLessThanOrEqualTo((int) Math.ceil(MISSED * all.seeds));
        assertThat(all.undecided.size()).as("%s", all).isLessThanOrEqualTo((int) Math.ceil(0.05 * all.seeds));
        assertThat(all.proved).as("%s", all).isGreaterThanOrEqualTo((int) (PROVED * (all.seeds - all.undecided.size() - all.wrong.size())))
                .isPositive();
        assertThat(all.statuses.keySet()).as("%s", all).contains(OrderStatus.SHORT);
    }

    /** Lots that sell from some number up, and lines that name a last day. */
    @Test
    void theSameWhereLotsSellInPacks() {
        OrderVerdicts all = new OrderVerdicts(PACKED_SEEDS, seed -> Packs.in(RandomOrder.small(seed)), RandomOrder::text);
        assertThat(all.wrong).as("%s", all).isEmpty();
    }

    /** Two machines of one build may take a part number in one of them alone. */
    @Test
    void whatMachinesOfOneBuildHaveTogetherOneMayHaveAlone() {
        assertThat(judge(RandomOrder.small(980163))).isEqualTo(new Verdict("", "", OrderStatus.PROVED, true));
    }

    /** A line may have lighter sleds for another enclosure, which nobody offers. */
    @Test
    void theLightestSledIsThatOfTheEnclosure() {
        assertThat(judge(RandomOrder.small(1301099)).wrong).isEmpty();
    }

    /** An enclosure is lacking in the best order that was found without {@code suppliers_max}, which need not be. */
    @Test
    void whatIsLackingIsAllThatIsInTheWayOnlyWhereThatIsProved() {
        assertThat(judge(RandomOrder.small(1330338)).wrong).isEmpty();
    }

    private static String shown(RandomOrder that) {
        RandomOrder small = OrderShrinker.shrink(that, next -> {
            try {
                return !judge(next).wrong.isEmpty();
            } catch (UndecidedException | EveryMachine.TooManyException tooHard) {
                return false;
            }
        });
        return "made smaller: %s%n%s".formatted(judge(small).wrong, small.text());
    }

    private static LongSupplier clock() {
        long planning = Thread.currentThread().getId();
        return Boolean.getBoolean("sledwright.busy") ? () -> ManagementFactory.getThreadMXBean().getThreadCpuTime(planning) : System::nanoTime;
    }

    static Verdict judge(RandomOrder that) {
        List<List<Machine>> machines = machines(that);
        CpSatOrder.Answer cheapest = decided(CpSatOrder.cheapest(that, machines, TIME));
        CpSatOrder.Answer most = cheapest.impossible() ? decided(CpSatOrder.most(that, machines, TIME)) : null;
        CpSatOrder.Answer least = cheapest.impossible() ? decided(CpSatOrder.cheapestOf(that, machines, most.value(), TIME)) : cheapest;
        OrderOutcome outcome;
        try {
            outcome = new OrderPlanner(that.catalog(), that.seed()).plan(that.order(), Deadline.in(LIMIT, clock()), progress -> { });
        } catch (RuntimeException defect) {
            return new Verdict(defect.toString(), "", null, false);
        }
        String unsound = OrderReading.wrong(outcome, that.order(), that.catalog());
        if (!unsound.isEmpty()) {
            return Verdict.of(unsound, "", outcome);
        }
        Verdict verdict = cheapest.impossible() ? inPart(outcome, most.value(), least.value() / (double) CpSatOrder.SCALE)
                : whole(outcome, least.value() / (double) CpSatOrder.SCALE);
        String wrongCause = cheapest.impossible() && verdict.wrong.isEmpty() ? OrderCauses.wrong(outcome, that, machines) : "";
        return wrongCause.isEmpty() ? verdict : Verdict.of(wrongCause, "", outcome);
    }

    static CpSatOrder.Answer decided(CpSatOrder.Answer answer) {
        if (!answer.proved()) {
            throw new UndecidedException();
        }
        return answer;
    }

    static List<List<Machine>> machines(RandomOrder that) {
        List<List<Machine>> machines = new ArrayList<>();
        for (OrderLine line : that.order().lines()) {
            machines.add(EveryMachine.of(that.catalog(), line.request(), line.uniform(), that.stock(line.request().limit())));
        }
        return machines;
    }

    private static Verdict whole(OrderOutcome outcome, double least) {
        String wrong = "";
        String missed = "";
        if (outcome.missing() > 0) {
            missed = "%d machines are missing where all can be had for %s".formatted(outcome.missing(), least);
            wrong = outcome.shortages().most() ? missed + ", as the most" : "";
        } else {
            return priced(outcome, least);
        }
        return Verdict.of(wrong, missed, outcome);
    }

    /** The cost of an order that delivers as much as the solver's. */
    private static Verdict priced(OrderOutcome outcome, double least) {
        String wrong = "";
        String missed = "";
        if (outcome.best() < least - CLOSE) {
            wrong = "best %s, the solver's least %s".formatted(outcome.best(), least);
        } else if (outcome.bound() > least + CLOSE) {
            wrong = "%s bound %s above an order of %s".formatted(outcome.status(), outcome.bound(), least);
        } else if (outcome.best() > least + CLOSE) {
            missed = "best %s, bound %s, the solver's least %s".formatted(outcome.best(), outcome.bound(), least);
        }
        return Verdict.of(wrong, missed, outcome);
    }

    private static Verdict inPart(OrderOutcome outcome, long most, double least) {
        long weight = outcome.lines().stream().mapToLong(line -> (long) line.line().priority() * line.delivered()).sum();
        String less = "weight %d is delivered, the solver's most is %d".formatted(weight, most);
        if (weight == most) {
            return priced(outcome, least);
        }
        boolean claimed = outcome.shortages().most();
        return Verdict.of(weight > most || weight < most && claimed ? less + (claimed ? ", claimed as the most" : "") : "", weight < most ? less : "", outcome);
    }
}
