package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sledwright.planner.order.OrderStatus;

/**
 * Orders of lines with drives, cards and extras against CP-SAT, which chooses among every valid machine of every line, each with every set of these.
 * More seeds by {@code -Dsledwright.seeds=300}, other ones by {@code -Dsledwright.seed=100001}.
 */
class EquippedOrdersAgainstCpSatTest {

    private static final int SEEDS = 10;

    @Test
    void theOptimumIsFoundAndProved() {
        Map<OrderStatus, Integer> statuses = new EnumMap<>(OrderStatus.class);
        List<Long> undecided = new ArrayList<>();
        List<String> missed = new ArrayList<>();
        List<String> wrong = new ArrayList<>();
        int[] proved = {0};
        Seeds.chosen(SEEDS).forEach(seed -> {
            RandomOrder that = RandomOrder.equipped(seed);
            try {
                OrderAgainstCpSatTest.Verdict verdict = OrderAgainstCpSatTest.judge(that);
                proved[0] += verdict.proved() ? 1 : 0;
                statuses.merge(verdict.status(), 1, Integer::sum);
                missed.addAll(verdict.missed().isEmpty() ? List.of() : List.of("seed %d: %s".formatted(seed, verdict.missed())));
                wrong.addAll(verdict.wrong().isEmpty() ? List.of() : List.of("seed %d: %s%n%s".formatted(seed, verdict.wrong(), wrong.isEmpty() ? that.text() : "")));
            } catch (OrderAgainstCpSatTest.UndecidedException | EveryMachine.TooManyException tooHard) {
                undecided.add(seed);
            }
        });
        long seeds = Seeds.chosen(SEEDS).count();
        String count = "%s, %d proved, could be better: %s, undecided %s".formatted(statuses, proved[0], missed, undecided);
        if (Boolean.getBoolean("sledwright.tell")) {
            System.err.println(count);
        }
        assertThat(wrong).as(count).isEmpty();
        // On a slow machine the time of a short order may end too early.
        assertThat(missed.size()).as(count).isLessThanOrEqualTo((int) Math.ceil(seeds * 0.03));
        assertThat(undecided.size()).as(count).isLessThanOrEqualTo((int) (seeds / 10));
        assertThat(proved[0]).as(count).isGreaterThanOrEqualTo((int) (0.8 * (seeds - undecided.size())));
        assertThat(statuses.keySet()).as(count).contains(OrderStatus.PROVED);
    }

    /** A controller that is sold from two up, and another line that asks for none: its machine takes no second one, so that neither can be had. */
    @Test
    void noLineTakesACardThatItDoesNotAskFor() {
        assertThat(OrderAgainstCpSatTest.judge(RandomOrder.equipped(1063)).wrong()).isEmpty();
    }
}
