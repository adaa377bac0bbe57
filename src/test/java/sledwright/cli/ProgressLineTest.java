package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sledwright.desk.Progress;
import sledwright.desk.Progress.Doing;
import sledwright.desk.Progress.Found;

class ProgressLineTest {

    private static final Optional<BigDecimal> UNKNOWN = Optional.empty();

    private static Optional<BigDecimal> amount(String amount) {
        return Optional.of(new BigDecimal(amount));
    }

    private static Found found(double seconds, Optional<BigDecimal> best, Optional<BigDecimal> bound, int missing) {
        return new Found(seconds, best, bound, "EUR", missing);
    }

    private static List<String> lines(List<? extends Progress> reports) {
        StringWriter err = new StringWriter();
        ProgressLine line = new ProgressLine(new PrintWriter(err, true));
        reports.forEach(line);
        return err.toString().lines().toList();
    }

    @Test
    void quickWorkIsSilent() {
        assertThat(lines(List.of(found(0.2, amount("50.00"), UNKNOWN, 0), found(0.99, amount("40.00"), amount("40.00"), 0)))).isEmpty();
    }

    @Test
    void longWorkTellsHowFarItHasCome() {
        assertThat(lines(List.of(found(1.26, amount("90000.00"), UNKNOWN, 2), found(2, amount("50.00"), UNKNOWN, 0),
                found(3, amount("50.00"), amount("40.00"), 0), found(4, amount("0.00"), amount("-1.00"), 0))))
                .containsExactly("sledwright: 1.3 s: 2 machines missing so far", "sledwright: 2 s: best 50.00 EUR, no bound yet",
                        "sledwright: 3 s: best 50.00 EUR, bound 40.00 EUR (gap 20 %)", "sledwright: 4 s: best 0.00 EUR, bound -1.00 EUR");
    }

    @Test
    void nobodyIsTalkedToMoreThanTwiceASecond() {
        List<Found> busy = IntStream.range(0, 1000).mapToObj(hundredth -> found(hundredth / 100.0, amount("50.00"), amount("40.00"), 0)).toList();
        assertThat(lines(busy)).hasSizeBetween(16, 18);
    }

    @Test
    void whatIsDoneIsToldAtOnce() {
        assertThat(lines(List.of(new Doing("trying whole quantities"), new Doing("trying others")))).containsExactly(
                "sledwright: trying whole quantities", "sledwright: trying others");
    }
}
