package sledwright.metrics;

import static org.assertj.core.api.Assertions.assertThat;
import static sledwright.samples.Samples.P10;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.processor;

import java.util.Map;
import org.junit.jupiter.api.Test;
import sledwright.domain.Processor;
import sledwright.domain.Request;

class ThroughputTest {

    private static final Processor NO_FIGURE = processor("EST").cores(12).clocksGhz(2.0, 2.5).noThroughput().make();

    @Test
    void theCataloguesFigureStands() {
        assertThat(Throughput.of(P10, Map.of("G1", 99.0))).isEqualTo(new Throughput(200, false));
    }

    @Test
    void withoutAFigureItIsEstimated() {
        assertThat(Throughput.of(NO_FIGURE, Map.of("G1", 8.0))).isEqualTo(new Throughput(12 * 2.5 * 8, true));
    }

    @Test
    void withoutAFactorItIsNothingAndStillAnEstimate() {
        assertThat(Throughput.of(NO_FIGURE, Map.of("G2", 8.0))).isEqualTo(new Throughput(0, true));
    }

    @Test
    void processorsAddUp() {
        assertThat(Throughput.of(NO_FIGURE, Map.of("G1", 8.0)).times(2)).isEqualTo(480);
        Figures figures = Figures.of(machine().processors(NO_FIGURE, P10).channels(4, R16).build(), Request.named("sample"), Map.of("G1", 8.0));
        assertThat(figures.throughput()).isEqualTo(440);
        assertThat(figures.throughputEstimated()).isTrue();
    }
}
