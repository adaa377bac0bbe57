package sledwright.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.metrics.Figures;
import sledwright.rules.memory.RankLimit;
import sledwright.rules.target.Target;
import sledwright.samples.Answers;

class OrderTest {

    @Test
    void machinesOfAKindAreOne() {
        Build cool = Answers.cool();
        Order order = Order.of(List.of(cool, Answers.coolHeavier(), cool, Answers.cool()), List.of(), Answers.ASKED.withMachines(4), Answers.SHOP);
        assertThat(order.kinds()).containsExactly(cool, Answers.coolHeavier());
    }

    /** Every machine reaches it, and none draws more. */
    @Test
    void figuresAreThoseOfTheWorst() {
        Order order = Answers.order(Answers.ASKED.withMachines(2), Answers.coolHeavier(), Answers.cool());
        Figures one = Figures.of(Answers.cool(), Answers.ASKED, Answers.SHOP.throughputFactors());
        assertThat(order.figures().loadW()).isEqualTo(one.loadW() + 4).isEqualTo(Figures.of(Answers.coolHeavier(), Answers.ASKED, Answers.SHOP.throughputFactors()).loadW());
        assertThat(order.figures().memoryGb()).isEqualTo(128);
        assertThat(order.figures().bandwidthGbs()).isEqualTo(one.bandwidthGbs());
    }

    @Test
    void rulesAreCalledByTheirIdentifiers() {
        assertThat(List.of(new RankLimit(), Target.CORES)).extracting(Object::toString).containsExactly("rank-limit", "cores");
        assertThat(Target.ALL).extracting(target -> target.noun() + target.unit()).contains("usable memory GB", "memory bandwidth GB/s", "number of spare slots");
    }
}
