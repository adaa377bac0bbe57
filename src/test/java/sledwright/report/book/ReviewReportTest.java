package sledwright.report.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sledwright.book.QuoteNumber;
import sledwright.book.QuoteState;
import sledwright.book.Reviewed;
import sledwright.book.SavedQuote;
import sledwright.report.text.Screen;
import sledwright.report.Schemas;

class ReviewReportTest {

    private static final BigDecimal WAS = new BigDecimal("100.00");
    private static final BigDecimal IS = new BigDecimal("90.00");

    private static List<Reviewed> review(Optional<BigDecimal> least) {
        SavedQuote.Offered offered = new SavedQuote.Offered(1, 1, "two rooms", 2, Optional.of(WAS), Optional.of(WAS), "EUR");
        SavedQuote.Days days = new SavedQuote.Days(LocalDate.of(2026, 3, 2), Optional.empty(), Optional.empty());
        return List.of(new Reviewed(new SavedQuote(new QuoteNumber(2026, 1), "Nordmole", QuoteState.SENT, offered, days, "", ""),
                Reviewed.Outcome.CHEAPER, Optional.of(IS), least, List.of()));
    }

    private static String text(Optional<BigDecimal> least) {
        return ReviewReport.text(review(least), new Screen(120, false));
    }

    @Test
    void noPriceIsTakenForTheBestThatIsNotProvedToBe() {
        assertThat(text(Optional.of(IS))).contains("90.00").doesNotContain("best found");
        assertThat(text(Optional.of(new BigDecimal("88.20"))))
                .endsWith("\n2026-0001: the best found, not proved; nothing costs less than 88.20 EUR.\n");
        assertThat(text(Optional.empty())).endsWith("\n2026-0001: the best found, not proved.\n");
        assertThat(ReviewJson.of(review(Optional.empty()))).contains("\"is\": 90.00", "\"bound\": null")
                .satisfies(json -> assertThat(Schemas.faults("review-result", json)).isEmpty());
        assertThat(ReviewReport.csv(review(Optional.of(IS)))).contains("cheaper,100.00,90.00,90.00,EUR,");
    }
}
