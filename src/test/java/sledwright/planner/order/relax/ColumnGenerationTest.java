package sledwright.planner.order.relax;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.domain.Assortment;
import sledwright.domain.Catalog;
import sledwright.domain.Enclosure;
import sledwright.domain.MemoryModule;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Request;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.Columns;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.ScaledMoney;
import sledwright.samples.Samples;
import sledwright.samples.Variations;

class ColumnGenerationTest {

    private static final long EACH = 10_000 + 1_000 + 5_000 + 2_000;
    private static final long ENCLOSURE = 30_000 + 2 * 500;

    /** Two lines of sleds and an enclosure of eight bays, of which each line could fill a share only. */
    private static Market market(boolean uniform) {
        MemoryModule module = Samples.module("M8", 8).ranks(1).width(8).make();
        Enclosure frame = new Enclosure("FRAME", "frame", Set.of("BOX"), 8, 60, 0, List.of(Samples.supply("FEED", 2, 1, 9_000, 0, Map.of())));
        Catalog bare = Samples.catalog(List.of(Samples.platform().counts(1).channels(2, 1).supplies().make()), List.of(Samples.P10), List.of(module),
                Samples.lot("BOX", "A", 9, 10_000), Samples.lot("LOW", "A", 9, 1_000), Samples.lot("P10", "A", 9, 5_000),
                Samples.lot("M8", "A", 9, 2_000), Samples.lot("FRAME", "A", 9, 30_000), Samples.lot("FEED", "A", 9, 500));
        Catalog shop = Variations.of(bare, new Assortment(bare.platforms(), List.of(frame), bare.processors(), bare.modules(), List.of(), List.of(), List.of()));
        Request asked = Request.named("web").withRequire(Samples.require().memoryGb(8).make());
        OrderLine two = new OrderLine("two", asked.withMachines(2), 1, uniform);
        OrderLine three = new OrderLine("three", asked.withMachines(3), 1, uniform);
        return new Market(shop, new OrderRequest("order", List.of(two, three), OptionalInt.empty(), 0, 0, Map.of()));
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void noLineSharesAnEnclosureWithMachinesThatItDoesNotHave(boolean uniform) {
        Market market = market(uniform);
        long[] penalty = {ScaledMoney.ONE * 1_000_000, ScaledMoney.ONE * 1_000_000};
        Pricer pricer = new Pricer(market, new Search(market.catalog()));
        ColumnGeneration relaxed = new ColumnGeneration(market, pricer, new Columns(2), penalty, false, Restrictions.NONE);
        relaxed.run(Long.MAX_VALUE, Deadline.never(), bound -> { });
        assertThat(relaxed.isFinished()).isTrue();
        assertThat(ScaledMoney.minor(relaxed.bound())).isBetween(5.0 * EACH + ENCLOSURE - 1, 5.0 * EACH + ENCLOSURE);
    }

    @Test
    void whenTheTimeEndsBeforeAnyBoundManyColumnsAreLeftAsTheyAre() {
        Market market = market(false);
        long[] penalty = {ScaledMoney.ONE * 1_000_000, ScaledMoney.ONE * 1_000_000};
        Pricer pricer = new Pricer(market, new Search(market.catalog()));
        Columns first = new Columns(2);
        new ColumnGeneration(market, pricer, first, penalty, false, Restrictions.NONE).run(Long.MAX_VALUE, Deadline.never(), bound -> { });
        Column known = first.all().get(0);
        for (int looks = 0; looks < 40; looks++) {
            Columns many = new Columns(2);
            for (int own = 0; own < 501; own++) {
                many.add(new Column(known.line(), known.builds(), known.bay(), known.own() + own, market.index()));
            }
            AtomicInteger left = new AtomicInteger(looks);
            Deadline soon = Deadline.never().or(() -> left.getAndDecrement() <= 0);
            ColumnGeneration relaxed = new ColumnGeneration(market, pricer, many, penalty, false, Restrictions.NONE);
            relaxed.run(Long.MAX_VALUE, soon, bound -> { });
            assertThat(ScaledMoney.minor(relaxed.bound())).isLessThanOrEqualTo(5.0 * EACH + ENCLOSURE);
        }
    }
}
