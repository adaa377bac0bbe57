package sledwright.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReviewTest {

    /** What is proved and what is not, beside a price of 100; a price or bound of 0 is none, a price before of -1 that there was no build. */
    @ParameterizedTest
    @CsvSource({"true,100,100,100,SAME", "true,100,90,100,SAME", "true,90,90,100,CHEAPER", "true,90,80,100,CHEAPER", "true,120,120,100,DEARER",
        "true,120,101,100,DEARER", "true,120,100,100,UNDECIDED", "true,120,0,100,UNDECIDED", "true,120,0,-1,CHEAPER", "true,0,0,100,IMPOSSIBLE",
        "false,0,0,100,UNDECIDED"})
    void aQuoteIsCalledDearerOnlyWhereThatIsProved(boolean known, long price, long least, long before, Reviewed.Outcome outcome) {
        assertThat(new Review.Best(known, figure(price), figure(least)).beside(before)).isEqualTo(outcome);
    }

    private static Optional<Long> figure(long minor) {
        return minor == 0 ? Optional.empty() : Optional.of(minor);
    }
}
