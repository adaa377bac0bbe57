package sledwright.metrics;

import static org.assertj.core.api.Assertions.assertThat;
import static sledwright.samples.Samples.L64;
import static sledwright.samples.Samples.P10;
import static sledwright.samples.Samples.Q32;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.R32;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.module;
import static sledwright.samples.Samples.processor;

import java.util.List;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.domain.MemoryModule;
import sledwright.domain.Processor;
import sledwright.metrics.MemorySpeed.SetBy;

/** On the sample platform: RDIMMs of up to two ranks 2400/2400/1866, of four 2133/2133, LRDIMMs 2400/2400/2133. */
class MemorySpeedTest {

    private static final MemoryModule R16_2666 = module("R16-2666", 16).mts(2666).make();
    private static final Processor FAST = processor("FAST").memoryMts(2933).make();

    @Test
    void theProcessorHoldsItDown() {
        Processor slow = processor("SLOW").memoryMts(1866).make();
        assertSpeed(machine().processors(2, slow).channels(4, R16).build(), 1866, SetBy.PROCESSOR);
    }

    @Test
    void theSlowestModuleHoldsItDown() {
        MemoryModule slow = module("R16-2133", 16).mts(2133).make();
        assertSpeed(machine().processors(2, FAST).channels(3, R16).channel(0, 3, R16).channel(1, 3, slow).build(), 2133, SetBy.MODULE);
    }

    @Test
    void thePlatformHoldsItDown() {
        assertSpeed(machine().processors(2, FAST).channels(4, R16_2666).build(), 2400, SetBy.MODULES_PER_CHANNEL);
    }

    @Test
    void aThirdModuleOnOneChannelSlowsThemAll() {
        assertSpeed(machine().processors(P10).channels(4, R16, R16).build(), 2400, SetBy.PROCESSOR);
        assertSpeed(machine().processors(P10).channels(3, R16, R16).channel(0, 3, R16, R16, R16).build(), 1866, SetBy.MODULES_PER_CHANNEL);
    }

    @Test
    void ofMixedRanksTheLowestGoverns() {
        assertSpeed(machine().processors(P10).channels(4, Q32, R32).build(), 2133, SetBy.MODULES_PER_CHANNEL);
    }

    @Test
    void aRowWithoutRanksServesAll() {
        assertSpeed(machine().processors(P10).channels(4, L64, L64, L64).build(), 2133, SetBy.MODULES_PER_CHANNEL);
    }

    @Test
    void ofEqualLimitsTheFirstIsNamed() {
        assertSpeed(machine().channels(4, R16).build(), 2400, SetBy.PROCESSOR);
        assertSpeed(machine().processors(2, FAST).channels(4, R16).build(), 2400, SetBy.MODULE);
    }

    @Test
    void nothingWithoutProcessorOrModule() {
        assertThat(MemorySpeed.of(machine().build()).mts()).isZero();
        assertThat(MemorySpeed.of(machine().processors().channel(0, 0, R16).build()).mts()).isZero();
    }

    private static void assertSpeed(Build build, int mts, SetBy setBy) {
        assertThat(MemorySpeed.of(build)).isEqualTo(new MemorySpeed(mts, setBy));
    }

    @Test
    void ofSeveralMachinesTheSlowestAndOfEqualsTheFirst() {
        Build fast = machine().processors(2, FAST).channels(4, R16_2666).build();
        Build slow = machine().processors(2, FAST).channels(4, R16, R16, R16).build();
        Build alike = machine().processors(2, FAST).channels(4, R16_2666, R16_2666, R16_2666).build();
        assertThat(MemorySpeed.slowest(List.of(fast, slow, alike))).isSameAs(slow);
        assertThat(MemorySpeed.slowest(List.of(alike, slow, fast))).isSameAs(alike);
    }

    @Test
    void labels() {
        assertThat(SetBy.values()).extracting(SetBy::label).containsExactly("processor", "module", "modules per channel");
    }
}
