package sledwright.report.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sledwright.book.Allocated;
import sledwright.book.QuoteNumber;
import sledwright.book.QuoteState;
import sledwright.book.SavedQuote;
import sledwright.planner.allot.LotName;
import sledwright.report.text.Screen;

class AllocationReportTest {

  private static final BigDecimal COST = new BigDecimal("100.00");

  private static String text(Allocated.Figures found, int leastBroken, int leastChanged, Optional<BigDecimal> leastCost) {
    SavedQuote quote =
        new SavedQuote(new QuoteNumber(2026, 1), "Nordmole", QuoteState.ACCEPTED, new SavedQuote.Offered(1, 1, "node", 2, Optional.of(COST), Optional.of(COST), "EUR"),
            new SavedQuote.Days(LocalDate.of(2026, 3, 2), Optional.empty(), Optional.empty()), "", "");
    Allocated.Drawn changed =
        new Allocated.Drawn(quote, Allocated.Fate.CHANGED, Optional.of(COST),
            new Allocated.LotChange(Map.of(new LotName("M08", "A30"), 2), Map.of(new LotName("M16", "A6"), 1)), List.of(), List.of(), Optional.empty());
    return AllocationReport.text(new Allocated(List.of(changed), List.of(), new Allocated.Quality(found, found, leastBroken, leastChanged, leastCost, "EUR", 1),
        null), false, new Screen(120, false));
  }

  /** No more is claimed than is proved. */
  @Test
  void whatIsNotProvedIsSaid() {
    assertThat(text(new Allocated.Figures(2, 4, COST), 1, 3, Optional.of(new BigDecimal("99.50")))).contains(
        "2 machines cannot be delivered; at least 1 cannot in any case.\n", "4 machines change; at least 3 do in any case.\n",
        "All that is delivered costs 100.00 EUR at today's prices; none like it costs less than 99.50 EUR.\n", "takes now", "2 M08 of lot A30");
    assertThat(text(new Allocated.Figures(0, 0, COST), 0, 0, Optional.empty())).contains("; how much less would do is not known.");
    assertThat(text(new Allocated.Figures(0, 0, BigDecimal.ZERO), 0, 0, Optional.empty())).doesNotContain("costs 0");
  }
}
