package sledwright.metrics;

import static org.assertj.core.api.Assertions.assertThat;
import static sledwright.samples.Samples.LOW;
import static sledwright.samples.Samples.P10;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.platform;

import java.util.List;
import org.junit.jupiter.api.Test;
import sledwright.domain.CoolingKit;
import sledwright.domain.Platform;

/** Two sockets of four channels of three slots: 24 slots. */
class SpareSlotsTest {

    private static final CoolingKit LONG = new CoolingKit("LONG", "long heat sink", 150, List.of("1A3", "1D3", "2A3", "2D3"));
    private static final Platform BOX = platform().cooling(LOW, LONG).make();

    @Test
    void emptySlotsOfFittedSockets() {
        assertThat(SpareSlots.of(machine(BOX).channels(4, R16).build())).isEqualTo(16);
        assertThat(SpareSlots.of(machine(BOX).processors(P10).channels(4, R16).build())).isEqualTo(8);
        assertThat(SpareSlots.of(machine(BOX).channels(4, R16, R16, R16).build())).isZero();
    }

    @Test
    void coveredSlotsAreNotSpare() {
        assertThat(SpareSlots.uncovered(BOX, LONG, 2)).isEqualTo(20);
        assertThat(SpareSlots.uncovered(BOX, LONG, 1)).isEqualTo(10);
        assertThat(SpareSlots.of(machine(BOX).cooling(LONG).channels(4, R16).build())).isEqualTo(12);
    }

    @Test
    void aModuleUnderTheHeatSinkUsesUpNoSpareSlot() {
        assertThat(SpareSlots.of(machine(BOX).cooling(LONG).processors(P10).slot("1A3", R16).build())).isEqualTo(10);
    }

    @Test
    void aModuleBesideAnEmptySocketUsesUpNoSpareSlot() {
        assertThat(SpareSlots.of(machine(BOX).processors(P10).slot("2A1", R16).build())).isEqualTo(12);
    }
}
