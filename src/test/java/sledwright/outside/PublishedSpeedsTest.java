package sledwright.outside;

import static org.assertj.core.api.Assertions.assertThat;
import static sledwright.samples.PlatformSketch.row;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.module;
import static sledwright.samples.Samples.platform;
import static sledwright.samples.Samples.processor;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.SpeedEntry;
import sledwright.metrics.MemorySpeed;
import sledwright.metrics.MemorySpeed.SetBy;
import sledwright.rules.Machine;
import sledwright.rules.Rulebook;

/**
 * Published speeds by modules per channel, entered as platform data: builds with one, two and three modules on every channel run
 * at the published speed and break no rule, and a module more than the table lists breaks one.
 */
class PublishedSpeedsTest {

    private static final int[] NONE = {};

    /** S: System x3650 M5 installation and service guide, p. 184: four channels of DDR4-2400. */
    @Test
    void fourChannelsOfDdr4At2400() {
        assertTable("DDR4", 4, 3, 2400, new int[] {2400, 2400, 1866}, new int[] {2400, 2400, 2133});
    }

    /** S: System x3500 M5 installation and service guide, p. 90: four channels of DDR4-2133. */
    @Test
    void fourChannelsOfDdr4At2133() {
        assertTable("DDR4", 4, 3, 2133, new int[] {2133, 1866, 1600}, new int[] {2133, 2133, 1600});
    }

    /** S: System x3550 M4 installation and service guide, p. 60: four channels of DDR3-1866. */
    @Test
    void fourChannelsOfDdr3At1866() {
        assertTable("DDR3", 4, 3, 1866, new int[] {1866, 1600, 1066}, NONE);
    }

    /** S for the figures, of published material whose title was not kept: eight channels of DDR5-4800. */
    @Test
    void eightChannelsOfDdr5At4800() {
        assertTable("DDR5", 8, 2, 4800, new int[] {4800, 4400}, NONE);
    }

    private static void assertTable(String generation, int channels, int slots, int rated, int[] registered, int[] loadReduced) {
        SpeedEntry rdimm = row(ModuleType.RDIMM, Set.of(1, 2), boxed(registered));
        SpeedEntry lrdimm = row(ModuleType.LRDIMM, Set.of(), boxed(loadReduced));
        Platform board = platform().memoryGeneration(generation).channels(channels, slots)
                .speeds(loadReduced.length == 0 ? new SpeedEntry[] {rdimm} : new SpeedEntry[] {rdimm, lrdimm}).make();
        assertSpeeds(board, rated, module("R", 16).generation(generation).mts(rated).make(), registered);
        assertSpeeds(board, rated, module("L", 32).generation(generation).type(ModuleType.LRDIMM).ranks(4, 2).mts(rated).make(), loadReduced);
    }

    private static void assertSpeeds(Platform board, int rated, MemoryModule module, int[] published) {
        Processor processor = processor("P").memoryMts(rated).make();
        for (int modules = 1; modules <= published.length; modules++) {
            List<MemoryModule> stack = Collections.nCopies(modules, module);
            Machine machine = machine(board).processors(2, processor)
                    .stacks(Collections.nCopies(board.board().channels(), stack)).make();
            assertThat(machine.figures().speed().mts()).as("%d x %s per channel", modules, module.type()).isEqualTo(published[modules - 1]);
            assertThat(machine.figures().speed().setBy()).isEqualTo(published[modules - 1] == rated ? SetBy.PROCESSOR : SetBy.MODULES_PER_CHANNEL);
            assertThat(Rulebook.judge(machine)).isEmpty();
        }
        // One channel more loaded than the others sets the speed of all.
        if (published.length > 1) {
            var uneven = machine(board).processors(processor).channels(board.board().channels(), module).channel(0, 0, module, module).build();
            assertThat(MemorySpeed.of(uneven).mts()).isEqualTo(published[1]);
        }
        assertThat(board.memory().speedMts(module.type(), module.ranks(), published.length + 1)).isEmpty();
    }

    private static Integer[] boxed(int... mts) {
        return Arrays.stream(mts).boxed().toArray(Integer[]::new);
    }
}
