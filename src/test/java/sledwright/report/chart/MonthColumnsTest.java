package sledwright.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MonthColumnsTest {

    private static final Pattern TEXT = Pattern.compile("<text x=\"([\\d.]+)\"");
    private static final int HALF_A_LABEL = 20;

    /** Also the first and the last, of however many months, on a phone and on a desk. */
    @ParameterizedTest
    @ValueSource(ints = {1, 3, 12, 24, 36})
    void everyLabelIsWithinTheDrawing(int months) {
        String drawn = MonthColumns.of(IntStream.range(0, months).mapToObj(month -> new MonthColumns.Month("2 Dec", 8, 1)).toList(), "all");
        List<String> both = List.of(drawn.split("(?=<svg )"));
        assertThat(both).hasSize(2);
        for (String one : both) {
            int width = one.contains("broad") ? 640 : 320;
            List<Double> middles = TEXT.matcher(one).results().map(MatchResult::group).map(text -> Double.valueOf(text.replaceAll("[^\\d.]", ""))).toList();
            assertThat(middles).isNotEmpty().allSatisfy(middle -> assertThat(middle).isBetween((double) HALF_A_LABEL, (double) width - HALF_A_LABEL));
        }
    }
}
