package sledwright.metrics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sledwright.samples.Samples.FACTORS;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.platform;
import static sledwright.samples.Samples.processor;
import static sledwright.samples.Samples.require;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.domain.MemoryMode;
import sledwright.domain.Request;
import sledwright.metrics.MemorySpeed.SetBy;

class FiguresTest {

    private static final Build BUILD = machine().channels(4, R16).build();
    private static final Request ANY = Request.named("sample");

    @Test
    void ofTheSampleMachine() {
        Figures figures = Figures.of(BUILD, ANY, FACTORS);
        assertThat(figures.processors()).isEqualTo(2);
        assertThat(figures.cores()).isEqualTo(20);
        assertThat(figures.baseGhz()).isEqualTo(2.2);
        assertThat(figures.allCoreGhz()).isEqualTo(2.6);
        assertThat(figures.memoryGb()).isEqualTo(128);
        assertThat(figures.usableGb()).isEqualTo(128);
        assertThat(figures.speed().mts()).isEqualTo(2400);
        assertThat(figures.bandwidthGbs()).isEqualTo(153.6);
        assertThat(figures.throughput()).isEqualTo(400);
        assertThat(figures.throughputEstimated()).isFalse();
        assertThat(figures.loadW()).isEqualTo(287);
        // 19.133 % of each of two supplies of 750 W: 82 + 9.133 / 10 x 6 = 87.48 %.
        assertThat(figures.wallW().orElseThrow()).isCloseTo(328.075, within(0.001));
        assertThat(figures.spareSlots()).isEqualTo(16);
    }

    @Test
    void perCore() {
        Figures figures = Figures.of(BUILD, ANY, FACTORS);
        assertThat(figures.gbPerCore()).isEqualTo(6.4);
        assertThat(figures.gbsPerCore()).isEqualTo(7.68);
        assertThat(Figures.perCore(128, 24)).isEqualTo(5.333333);
        assertThat(Figures.perCore(128, 0)).isZero();
    }

    @Test
    void aModeChangesUsableMemoryAndNotBandwidth() {
        Figures figures = Figures.of(BUILD, ANY.withRequire(require().mode(MemoryMode.MIRRORED).make()), FACTORS);
        assertThat(figures.memoryGb()).isEqualTo(128);
        assertThat(figures.usableGb()).isEqualTo(64);
        assertThat(figures.gbPerCore()).isEqualTo(3.2);
        assertThat(figures.bandwidthGbs()).isEqualTo(153.6);
    }

    @Test
    void ofUnequalProcessorsTheSlowerClock() {
        Figures figures = Figures.of(machine().processors(processor("X").clocksGhz(2.0, 3.0).make(), processor("Y").clocksGhz(2.5, 2.7).make())
                .channels(4, R16).build(), ANY, FACTORS);
        assertThat(figures.baseGhz()).isEqualTo(2.0);
        assertThat(figures.allCoreGhz()).isEqualTo(2.7);
    }

    @Test
    void ofAMachineWithoutProcessors() {
        Figures figures = Figures.of(machine().processors().build(), ANY, FACTORS);
        assertThat(figures.cores()).isZero();
        assertThat(figures.baseGhz()).isZero();
        assertThat(figures.allCoreGhz()).isZero();
        assertThat(figures.bandwidthGbs()).isZero();
        assertThat(figures.loadW()).isEqualTo(85);
    }

    @Test
    void noWallPowerWhereTheEnclosureFeedsTheMachine() {
        assertThat(Figures.of(machine(platform().supplies().make()).channels(4, R16).build(), ANY, FACTORS).wallW()).isEmpty();
    }

    /** Two machines of which each is the worse one in half of the figures. */
    @Test
    void ofSeveralMachinesWhatEachReaches() {
        MemorySpeed fast = new MemorySpeed(2400, SetBy.MODULE);
        MemorySpeed slow = new MemorySpeed(1866, SetBy.PROCESSOR);
        Figures one = new Figures(new Figures.ProcessorFigures(1, 20, 2.0, 3.0, 500, false), new Figures.MemoryFigures(64, 64, fast, 100, 4), 200,
                OptionalDouble.of(230), 500, WorkDone.Held.NOTHING);
        Figures other = new Figures(new Figures.ProcessorFigures(2, 10, 2.5, 2.5, 400, true), new Figures.MemoryFigures(128, 32, slow, 200, 8), 300,
                OptionalDouble.of(220), 400, WorkDone.Held.NOTHING);
        Figures each = new Figures(new Figures.ProcessorFigures(1, 10, 2.0, 2.5, 400, true), new Figures.MemoryFigures(64, 32, slow, 100, 4), 300,
                OptionalDouble.of(230), 400, WorkDone.Held.NOTHING);
        assertThat(Figures.ofEach(List.of(one, other))).isEqualTo(each);
        assertThat(Figures.ofEach(List.of(other, one))).isEqualTo(each);
        assertThat(Figures.ofEach(List.of(one))).isEqualTo(one);
        Figures unfed = new Figures(new Figures.ProcessorFigures(1, 20, 2.0, 3.0, 500, false), new Figures.MemoryFigures(64, 64, fast, 100, 4), 200,
                OptionalDouble.empty(), 500, WorkDone.Held.NOTHING);
        assertThat(Figures.ofEach(List.of(one, unfed)).wallW()).isEmpty();
        assertThat(Figures.ofEach(List.of(unfed, one)).wallW()).isEmpty();
        assertThat(Figures.ofEach(List.of(one, unfed)).throughputEstimated()).isFalse();
    }

    /** Of equal speeds what holds the first one is reported. */
    @Test
    void ofEqualSpeedsTheFirst() {
        Figures one = Figures.of(machine().processors(2, processor("SLOW").memoryMts(2400).make()).channels(4, R16).build(), ANY, FACTORS);
        Figures other = Figures.of(machine().processors(2, processor("FAST").memoryMts(2933).make()).channels(4, R16).build(), ANY, FACTORS);
        assertThat(Figures.ofEach(List.of(one, other)).speed()).isEqualTo(new MemorySpeed(2400, SetBy.PROCESSOR));
        assertThat(Figures.ofEach(List.of(other, one)).speed()).isEqualTo(new MemorySpeed(2400, SetBy.MODULE));
    }
}
