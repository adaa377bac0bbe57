package sledwright.input;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FigureTest {

    @ParameterizedTest
    @CsvSource({"0, 0", "24, 24", "007, 7", "+3, 3", "-3, -3", "2.50, 2.5", ".5, 0.5", "5., 5", "1e3, 1000", "1.5E-2, 0.015"})
    void numbers(String text, String value) {
        assertThat(Figure.parse(text, false).value()).hasValueSatisfying(figure -> assertThat(figure).isEqualByComparingTo(value));
        assertThat(Figure.parse(text, true).value()).hasValueSatisfying(figure -> assertThat(figure).isEqualByComparingTo(value));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"21,50 | 21.50", "1,5 | 1.5", "-0,25 | -0.25", "1150,00 | 1150"})
    void decimalCommaOnlyWhereTheFileAllowsIt(String text, String value) {
        assertThat(Figure.parse(text, true).value()).hasValueSatisfying(figure -> assertThat(figure).isEqualByComparingTo(value));
        assertThat(Figure.parse(text, false).value()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
            "32GB | drop the unit and write 32", "2.4 GHz | drop the unit and write 2.4", "87 % | write 87 where percent are asked for, 0.87 where a share is", "0.5TB | must be a number alone; TB is not the unit here, so work it out",
            "1.2 kW | kW is not the unit here", "2 weeks | weeks is not the unit here", "1500m | drop the unit and write 1500",
            "£12.50 | drop the unit and write 12.50", "12 € | drop the unit and write 12", "2,5 V | drop the unit and write 2,5",
            "1,024 | write 1024, or decimals with a point", "2,5 | write 2.5", "NaN | finite", "-Infinity | finite", ".inf | finite",
            "1e400 | too many digits", "1e-400 | too many digits", "0x10 | a number", "1_000 | a number", "1 000 | a number",
            "twelve | a number", "- | a number", "1.2.3 | a number", "٣ | a number", "12345678901234567890123456789012 | too long"})
    void problemsSayWhatWouldBeRight(String text, String says) {
        Figure figure = Figure.parse(text, false);
        assertThat(figure.value()).isEmpty();
        assertThat(figure.problem()).contains(says);
    }

    @ParameterizedTest
    @ValueSource(strings = {"1.234", "1.234,5", "12.345.678"})
    void aPointThatMaySeparateThousandsIsRefusedBesideDecimalCommas(String text) {
        assertThat(Figure.parse(text, true).problem()).contains("could be thousands or decimals");
    }

    @Test
    void noFigureIsTooLongToRefuseAtOnce() {
        assertThat(Figure.parse("9".repeat(1_000_000), false).problem()).contains("too long");
        assertThat(Figure.parse("1e999999999", false).value()).isEmpty();
    }
}
