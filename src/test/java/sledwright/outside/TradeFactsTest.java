package sledwright.outside;

import static org.assertj.core.api.Assertions.assertThat;
import static sledwright.outside.TradeBoard.LONG;
import static sledwright.outside.TradeBoard.LRDIMM_64;
import static sledwright.outside.TradeBoard.P120;
import static sledwright.outside.TradeBoard.P135;
import static sledwright.outside.TradeBoard.P145;
import static sledwright.outside.TradeBoard.P85;
import static sledwright.outside.TradeBoard.PLATFORM;
import static sledwright.outside.TradeBoard.RDIMM_32;
import static sledwright.outside.TradeBoard.RDIMM_32_2666;
import static sledwright.outside.TradeBoard.SHORT;
import static sledwright.samples.Samples.catalog;
import static sledwright.samples.Samples.lot;
import static sledwright.samples.Samples.module;
import static sledwright.samples.Samples.require;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.Objective;
import sledwright.domain.Part;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Slot;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.metrics.Figures;

/** Facts of the trade that the search must find by itself. All of them: common practice, no source. */
class TradeFactsTest {

    private static final Requirements TWO = require().processors(2).make();

    @ParameterizedTest
    @CsvSource({"R32-2400, 768", "L64-2400, 1536"})
    void topsOut(String sku, int gb) {
        MemoryModule module = sku.equals("R32-2400") ? RDIMM_32 : LRDIMM_64;
        Catalog shop = shop(List.of(P85), List.of(module), Map.of());
        Build most = best(shop, asked(TWO).withObjective(Objective.MOST_MEMORY));
        assertThat(figures(most, shop).memoryGb()).isEqualTo(gb);
        assertThat(most.modules()).hasSize(24);
        Request more = asked(require().processors(2).memoryGb(gb + 1).make());
        assertThat(new Search(shop).run(more, Deadline.never()).status()).isEqualTo(Status.IMPOSSIBLE);
    }

    /** At the same speed the faster module wins only when it costs no more. */
    @ParameterizedTest
    @CsvSource({"4000, 4001, R32-2400", "4000, 3999, R32-2666"})
    void aModuleRated2666WinsOnABoardFor2400OnlyWhenItCostsNoMore(long price2400, long price2666, String winner) {
        Catalog shop = shop(List.of(P85), List.of(RDIMM_32, RDIMM_32_2666), Map.of("R32-2400", price2400, "R32-2666", price2666));
        Build best = best(shop, asked(require().processors(2).memoryGb(256).bandwidthGbs(153.6).make()));
        assertThat(best.modules().values()).extracting(MemoryModule::sku).containsOnly(winner);
        assertThat(figures(best, shop).speed().mts()).isEqualTo(2400);
        assertThat(figures(best, shop).bandwidthGbs()).isEqualTo(153.6);
    }

    @Test
    void upTo120WTakesTheShortHeatSinkAndAll24Slots() {
        Catalog shop = shop(List.of(P120), List.of(RDIMM_32), Map.of());
        Build most = best(shop, asked(TWO).withObjective(Objective.MOST_MEMORY));
        assertThat(most.cooling()).isEqualTo(SHORT);
        assertThat(most.modules()).hasSize(24);
    }

    @Test
    void above120WTakesTheLongHeatSinkWhichLeaves20() {
        for (Processor hot : List.of(P135, P145)) {
            Catalog shop = shop(List.of(hot), List.of(RDIMM_32), Map.of());
            Build most = best(shop, asked(TWO).withObjective(Objective.MOST_MEMORY));
            assertThat(most.cooling()).isEqualTo(LONG);
            assertThat(most.modules()).hasSize(20);
            assertThat(figures(most, shop).memoryGb()).isEqualTo(640);
            assertThat(figures(most, shop).spareSlots()).isZero();
        }
    }

    /** Nobody asks for speed here: of the equally dear layouts the one of most bandwidth is the best. */
    @Test
    void sixteenModulesOf32GbStandInFirstAndSecondSlotsOfEveryChannel() {
        Catalog shop = shop(List.of(P85), List.of(RDIMM_32), Map.of());
        Build best = best(shop, asked(require().processors(2).memoryGb(512).make()));
        assertThat(best.modules()).hasSize(16);
        assertThat(best.modules().keySet()).containsExactlyInAnyOrderElementsOf(
                PLATFORM.board().slots().stream().filter(slot -> slot.position() < 2).toList());
    }

    @ParameterizedTest
    @CsvSource({"1, 4", "2, 8"})
    void fourOrEightModulesGoToFirstSlots(int processors, int modules) {
        Catalog shop = shop(List.of(P85), List.of(RDIMM_32), Map.of());
        Build best = best(shop, asked(require().processors(processors).memoryGb(32.0 * modules).make()));
        assertThat(best.modules()).hasSize(modules);
        assertThat(best.modules().keySet()).extracting(Slot::position).containsOnly(0);
        assertThat(best.modules().keySet().stream().map(slot -> Slot.channelName(slot.socket(), slot.channel())).collect(Collectors.toSet())).hasSize(modules);
    }

    /** Three of four ranks break the limit of eight, so the third slots stay empty or take modules of fewer ranks. */
    @Test
    void theThirdSlotIsWhereTheRankLimitBites() {
        Catalog shop = shop(List.of(P85), List.of(TradeBoard.RDIMM_32_FOUR_RANKS), Map.of());
        Build most = best(shop, asked(TWO).withObjective(Objective.MOST_MEMORY));
        assertThat(most.modules()).hasSize(16);
        assertThat(most.modules().keySet()).noneMatch(slot -> slot.position() == 2);
    }

    /** The bandwidth of eight spread modules can't be had with fewer channels, however cheap the larger modules are. */
    @Test
    void aRequestForBandwidthSpreadsTheModules() {
        MemoryModule large = module("R64-2400", 64).make();
        Catalog shop = shop(List.of(P85), List.of(RDIMM_32, large), Map.of("R64-2400", 100L, "R32-2400", 9_000L));
        Build lean = best(shop, asked(require().processors(2).memoryGb(256).make()));
        assertThat(lean.modules()).hasSize(4);
        assertThat(figures(lean, shop).bandwidthGbs()).isEqualTo(76.8);
        Build fast = best(shop, asked(require().processors(2).memoryGb(256).bandwidthGbs(153.6).make()));
        assertThat(fast.modules()).hasSize(8);
        assertThat(fast.modules().keySet()).extracting(Slot::position).containsOnly(0);
    }

    private static Request asked(Requirements least) {
        return Request.named("trade").withRequire(least).withAlternatives(1, 0.05);
    }

    private static Build best(Catalog shop, Request request) {
        Findings found = new Search(shop).run(request, Deadline.never());
        assertThat(found.status()).isEqualTo(Status.PROVED);
        return found.ranked().get(0).machines().get(0);
    }

    private static Figures figures(Build build, Catalog shop) {
        return Figures.of(build, Request.named("trade"), shop.throughputFactors());
    }

    /** A shop with plenty of everything at 40.00 a piece, save what {@code prices} states in minor units. */
    private static Catalog shop(List<Processor> processors, List<MemoryModule> modules, Map<String, Long> prices) {
        List<Part> parts = new ArrayList<>(List.of(PLATFORM, SHORT, LONG));
        parts.addAll(processors);
        parts.addAll(modules);
        Lot[] lots = parts.stream().map(part -> lot(part.sku(), "A", 99, prices.getOrDefault(part.sku(), 4_000L))).toArray(Lot[]::new);
        return catalog(List.of(PLATFORM), processors, modules, lots);
    }
}
