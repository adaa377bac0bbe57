package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

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
        OrderVerdicts all = new OrderVerdicts(SEEDS, RandomOrder::equipped, RandomOrder::text);
        assertThat(all.wrong).as("%s", all).isEmpty();
        // On a slow machine the time of a short order may end too early.
        assertThat(all.missed.size()).as("%s", all).isLessThanOrEqualTo((int) Math.ceil(all.seeds * 0.03));
        assertThat(all.undecided.size()).as("%s", all).isLessThanOrEqualTo((int) (all.seeds / 10));
        assertThat(all.proved).as("%s", all).isGreaterThanOrEqualTo((int) (0.8 * (all.seeds - all.undecided.size())));
        assertThat(all.statuses.keySet()).as("%s", all).contains(OrderStatus.PROVED);
    }

    /** A controller that is sold from two up, and another line that asks for none: its machine takes no second one, so that neither can be had. */
    @Test
    void noLineTakesACardThatItDoesNotAskFor() {
        assertThat(OrderAgainstCpSatTest.judge(RandomOrder.equipped(1063)).wrong()).isEmpty();
    }
}
