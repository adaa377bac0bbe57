package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sledwright.planner.order.OrderProgress;

class ProgressLineTest {

    private static List<String> lines(List<OrderProgress> reports) {
        StringWriter err = new StringWriter();
        ProgressLine progress = new ProgressLine(new PrintWriter(err, true), minor -> minor / 100 + " EUR");
        reports.forEach(progress);
        return err.toString().lines().toList();
    }

    @Test
    void quickWorkIsSilent() {
        assertThat(lines(List.of(new OrderProgress(0.2, 5000, Double.NaN, 0), new OrderProgress(0.99, 4000, 4000, 0)))).isEmpty();
    }

    @Test
    void longWorkTellsHowFarItHasCome() {
        assertThat(lines(List.of(new OrderProgress(1.26, 9e9, Double.NaN, 2), new OrderProgress(2, 5000, Double.NaN, 0), new OrderProgress(3, 5000, 4000, 0))))
                .containsExactly("sledwright: 1.3 s: 2 machines missing so far", "sledwright: 2 s: best 50.0 EUR, no bound yet",
                        "sledwright: 3 s: best 50.0 EUR, bound 40.0 EUR (gap 20 %)");
    }

    @Test
    void nobodyIsTalkedToMoreThanTwiceASecond() {
        List<OrderProgress> busy = IntStream.range(0, 1000).mapToObj(hundredth -> new OrderProgress(hundredth / 100.0, 5000, 4000, 0)).toList();
        assertThat(lines(busy)).hasSizeBetween(16, 18);
    }
}
