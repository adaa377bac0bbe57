package sledwright.planner.order.relax;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sledwright.domain.Catalog;
import sledwright.domain.MemoryModule;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Request;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.ScaledMoney;
import sledwright.samples.Samples;

class PricerTest {

    /** Two machines of one build, of two modules each that two part numbers are alike for. */
    private static Market market() {
        MemoryModule cheap = Samples.module("M8", 8).ranks(1).width(8).make();
        MemoryModule dear = Samples.module("N8", 8).ranks(1).width(8).make();
        Catalog shop = Samples.catalog(List.of(Samples.platform().counts(1).channels(2, 1).supplies().make()), List.of(Samples.P10), List.of(cheap, dear),
                Samples.lot("BOX", "A", 9, 10_000), Samples.lot("LOW", "A", 9, 1_000), Samples.lot("P10", "A", 9, 5_000),
                Samples.lot("M8", "A", 9, 2_000), Samples.lot("N8", "A", 9, 3_000));
        Request asked = Request.named("web").withRequire(Samples.require().memoryGb(16).make()).withMachines(2);
        return new Market(shop, new OrderRequest("order", List.of(new OrderLine("web", asked, 1, true)), OptionalInt.empty(), 0, 0, Map.of()));
    }

    /** What they have to take together one of them may take alone: asked of both, a bound was above the best order (seed 980163 of the random orders). */
    @ParameterizedTest
    @CsvSource({"1, 1", "2, 2", "3, 3", "4, 4"})
    void machinesOfOneBuildTakeUnitsTogetherAndNotEach(int least, int taken) {
        Market market = market();
        int dear = market.index().get("N8");
        long[][] prices = new long[1][market.parts()];
        prices[0][market.index().get("M8")] = 2_000 * ScaledMoney.ONE;
        prices[0][dear] = 3_000 * ScaledMoney.ONE;
        Pricer.Best best = new Pricer(market, new Search(market.catalog())).best(0, Set.of(new Trait.Takes(0, dear, least)), Map.of(), 2,
                new Duals(prices, new long[0], new long[0], Map.of(), 0), Deadline.never());
        assertThat(best.column().unitsOf(dear)).isEqualTo(taken);
        assertThat(best.least()).isEqualTo(ScaledMoney.ONE * (2_000 * (4 - taken) + 3_000 * taken));
    }
}
