package sledwright.planner.order.relax;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.MemoryModule;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Request;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.OfferedLot;
import sledwright.samples.Samples;

class StockCutTest {

    private static final int CASES = 2_000;
    private static final int MOST = 30;

    /** Twenty units: two machines of eight, or one of them and two of five, but not two and a half. */
    @Test
    void whatDoesNotFillABlockCountsNothing() {
        StockCut cut = new StockCut(0, Set.of(0), 20, List.of(), 8);
        assertThat(cut.most()).isEqualTo(2 * 4);
        assertThat(IntStream.of(4, 5, 8, 12, 13).mapToLong(cut::of)).containsExactly(0L, 1L, 4L, 4L, 5L);
        assertThat(cut.counts(0, 0)).isTrue();
        assertThat(cut.counts(1, 0)).isFalse();
        assertThat(cut.counts(0, 1)).isFalse();
    }

    /** Random columns that together take no more than the stock and some units besides. */
    @Test
    void noWholeColumnsViolateIt() {
        int tight = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            int stock = random.nextInt(1, MOST);
            int further = random.nextInt(3) == 0 ? random.nextInt(MOST) : 0;
            StockCut cut = new StockCut(0, Set.of(0), stock, List.of(), random.nextInt(1, stock + 2));
            long counted = 0;
            for (int left = stock + further; left > 0;) {
                int units = Math.min(left, random.nextInt(1, MOST / 2));
                counted += cut.of(units);
                left -= units;
            }
            assertThat(counted).as("seed %d", seed).isLessThanOrEqualTo(cut.most() + further);
            tight += counted == cut.most() + further && counted > 0 ? 1 : 0;
        }
        assertThat(tight).isGreaterThan(CASES / 20);
    }

    /** What several take together counts no less than what each of them takes: the search for machines of one build relies on it. */
    @Test
    void togetherUnitsCountNoLess() {
        for (int stock = 1; stock < MOST; stock++) {
            for (int block = 1; block <= stock; block++) {
                StockCut cut = new StockCut(0, Set.of(0), stock, List.of(), block);
                for (int one = 0; one < MOST; one++) {
                    for (int other = 0; other < MOST; other++) {
                        assertThat(cut.of(one + other)).isGreaterThanOrEqualTo(cut.of(one) + cut.of(other));
                    }
                }
            }
        }
    }

    /** Five modules: one machine of two and a half more is a mix, and none that can be ordered. Three in a further lot make room. */
    @Test
    void itIsFoundWhereTheMixTakesPartOfAMachine() {
        MemoryModule few = Samples.module("FEW", 8).ranks(1).width(8).make();
        Catalog shop = Samples.catalog(List.of(Samples.platform().counts(1).channels(2, 1).supplies().make()), List.of(Samples.P10),
                List.of(few), Samples.lot("BOX", "A", 9, 1), Samples.lot("LOW", "A", 9, 1), Samples.lot("P10", "A", 9, 1),
                Samples.lot("FEW", "A", 5, 1), Samples.lot("FEW", "B", 3, 9));
        Request asked = Request.named("web").withMachines(4).withRequire(Samples.require().memoryGb(16).make());
        Market market = new Market(shop, new OrderRequest("order", List.of(new OrderLine("web", asked, 1, false)), OptionalInt.empty(),
                0, 0, Map.of()));
        Build build = new Search(shop).run(asked.withMachines(1), Deadline.never()).ranked().get(0).machines().get(0);
        Column column = new Pricer(market, new Search(shop)).column(0, List.of(build), null);
        int part = market.index().get("FEW");
        List<OfferedLot> lots = market.sources(part);
        List<StockCut> cuts = violated(market, Map.of(column, 2.5), Map.of(lots.get(0), 5.0));
        assertThat(cuts).hasSize(1);
        assertThat(cuts.get(0).part()).isEqualTo(part);
        assertThat(cuts.get(0).most()).isEqualTo(2);
        assertThat(cuts.get(0).of(2)).isEqualTo(1);
        assertThat(cuts.get(0).beyond()).containsExactly(lots.get(1));
        assertThat(violated(market, Map.of(column, 2.0), Map.of(lots.get(0), 4.0))).as("whole").isEmpty();
        assertThat(violated(market, Map.of(column, 3.0), Map.of(lots.get(0), 5.0, lots.get(1), 1.0))).as("with one of the further lot")
                .isEmpty();
    }

    private static List<StockCut> violated(Market market, Map<Column, Double> columns, Map<OfferedLot, Double> drawn) {
        return new StockCuts(market, Restrictions.NONE, new RestrictedMaster.Mix(0, columns, Map.of(), drawn, Map.of(), 0, null))
                .violated();
    }
}
