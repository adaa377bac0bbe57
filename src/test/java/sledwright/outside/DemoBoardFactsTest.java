package sledwright.outside;

import static org.assertj.core.api.Assertions.assertThat;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.require;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import sledwright.catalog.CatalogReader;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.metrics.SpareSlots;
import sledwright.rules.Machine;
import sledwright.rules.Rulebook;
import sledwright.rules.cooling.HeatSinkRating;

/** The demo shop's sled of two sockets keeps the facts of the trade. All of them: common practice, no source. */
class DemoBoardFactsTest {

    private static Catalog shop;
    private static Platform sled;

    @BeforeAll
    static void read() {
        shop = CatalogReader.read(Path.of("catalogs", "heronfold-yard"));
        sled = shop.platform("FINCH-S4").orElseThrow();
    }

    @Test
    void fourChannelsOfThreeSlotsBesideTwoSocketsAre24() {
        assertThat(sled.memory().channels()).isEqualTo(4);
        assertThat(sled.memory().slotsPerChannel()).isEqualTo(3);
        assertThat(sled.board().slots()).hasSize(24);
    }

    @Test
    void processorsUpTo120WLeave24SlotsAndHotterOnes20() {
        List<Processor> fitting = shop.processors().stream().filter(processor -> processor.socket().equals(sled.processors().socket())).toList();
        assertThat(fitting.stream().filter(processor -> processor.tdpW() <= 120)).isNotEmpty()
                .allSatisfy(processor -> assertThat(slots(processor)).as(processor.sku()).isEqualTo(24));
        assertThat(fitting.stream().filter(processor -> processor.tdpW() == 135 || processor.tdpW() == 145)).isNotEmpty()
                .allSatisfy(processor -> assertThat(slots(processor)).as(processor.sku()).isEqualTo(20));
    }

    @Test
    void full32GbRdimmsAre768GbAnd64GbLrdimms1536() {
        assertThat(full(ModuleType.RDIMM, 32)).isNotEmpty().allSatisfy(machine -> {
            assertThat(machine.figures().memoryGb()).isEqualTo(768);
            assertThat(Rulebook.judge(machine)).isEmpty();
        });
        assertThat(full(ModuleType.LRDIMM, 64)).isNotEmpty().allSatisfy(machine -> {
            assertThat(machine.figures().memoryGb()).isEqualTo(1536);
            assertThat(Rulebook.judge(machine)).isEmpty();
        });
    }

    @Test
    void aModuleRated2666RunsAt2400() {
        Processor fast = coolest(2400);
        assertThat(shop.modules().stream().filter(module -> module.generation().equals("DDR4") && module.type() == ModuleType.RDIMM
                && module.ranks() <= 2 && module.speedMts() >= 2666)).isNotEmpty().allSatisfy(module ->
                assertThat(machine(sled).processors(2, fast).noSupply().channels(4, module).make().figures().speed().mts()).isEqualTo(2400));
    }

    @Test
    void sixteenModulesOf32GbStandInFirstAndSecondSlots() {
        Build best = search(only32Gb(ModuleType.RDIMM, "S2-16", 512)).ranked().get(0).machines().get(0);
        assertThat(best.modules()).hasSize(16);
        assertThat(best.modules().keySet()).containsExactlyInAnyOrderElementsOf(
                sled.board().slots().stream().filter(slot -> slot.position() < 2).toList());
    }

    @Test
    void aProcessorOf120WTakes24ModulesUnderTheShortHeatSinkAndOneOf145WDoesNot() {
        Findings cool = search(only32Gb(ModuleType.RDIMM, "S2-16", 768));
        assertThat(cool.status()).isEqualTo(Status.PROVED);
        assertThat(cool.ranked().get(0).machines().get(0).cooling().sku()).isEqualTo("FINCH-S4-HS68");
        assertThat(search(only32Gb(ModuleType.RDIMM, "S2-22X", 768)).status()).isEqualTo(Status.IMPOSSIBLE);
        Findings hot = search(only32Gb(ModuleType.RDIMM, "S2-22X", 640));
        assertThat(hot.status()).isEqualTo(Status.PROVED);
        assertThat(hot.ranked().get(0).machines().get(0).cooling().sku()).isEqualTo("FINCH-S4-HS86");
        assertThat(hot.ranked().get(0).machines().get(0).modules()).hasSize(20);
    }

    /** Two of a processor on the sled, and no module but those of 32 GB of a type. */
    private static Request only32Gb(ModuleType type, String processor, int memoryGb) {
        Set<String> others = shop.modules().stream().filter(module -> module.type() != type || module.capacityGb() != 32)
                .map(MemoryModule::sku).collect(Collectors.toSet());
        return Request.named("trade").withPlatforms(Set.of(sled.sku())).withUse(Set.of(processor)).withForbid(others)
                .withRequire(require().processors(2).memoryGb(memoryGb).make()).withAlternatives(1, 0.05);
    }

    private static Findings search(Request request) {
        return new Search(shop).run(request, Deadline.never());
    }

    /** The most slots that any kit for the processor leaves. */
    private static int slots(Processor processor) {
        return sled.cooling().stream().filter(kit -> HeatSinkRating.allows(kit, processor))
                .mapToInt((CoolingKit kit) -> SpareSlots.uncovered(sled, kit, 2)).max().orElseThrow();
    }

    private static Stream<Machine> full(ModuleType type, int gb) {
        return shop.modules().stream().filter(module -> module.generation().equals("DDR4") && module.type() == type
                && module.capacityGb() == gb && module.ranks() == (type == ModuleType.RDIMM ? 2 : 4)).map(DemoBoardFactsTest::full);
    }

    private static Machine full(MemoryModule module) {
        return machine(sled).processors(2, coolest(2400)).noSupply().channels(4, module, module, module).make();
    }

    private static Processor coolest(int memoryMts) {
        return shop.processors().stream().filter(processor -> processor.socket().equals(sled.processors().socket())
                        && processor.memoryMts() == memoryMts && sled.processors().generations().contains(processor.generation()))
                .min(Comparator.comparingDouble(Processor::tdpW)).orElseThrow();
    }
}
