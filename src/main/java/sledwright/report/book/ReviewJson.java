package sledwright.report.book;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sledwright.book.Reviewed;
import sledwright.book.SavedQuote;
import sledwright.report.text.Json;

/**
 * Open quotes against today's catalogue, as JSON.
 *
 * @param counts outcome -> how many quotes
 */
public record ReviewJson(Map<String, Integer> counts, List<Held> quotes) {

    /** One quote. */
    public record Held(String number, String customer, String outcome, @JsonUnwrapped Prices prices, List<String> soldOut) {

        private static Held of(Reviewed one) {
            SavedQuote.Offered offered = one.quote().offered();
            return new Held(one.quote().number().toString(), one.quote().customer(), one.outcome().label(),
                    new Prices(offered.price().orElse(null), one.now().orElse(null), one.least().orElse(null), offered.currency()),
                    one.soldOut());
        }
    }

    /** What it came to, comes to and comes to at least; each is null where there is none. */
    public record Prices(BigDecimal was, BigDecimal is, BigDecimal bound, String currency) {
    }

    public static String of(List<Reviewed> all) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        ReviewReport.counts(all).forEach((outcome, count) -> counts.put(outcome.label(), count));
        return Json.of(new ReviewJson(counts, all.stream().map(Held::of).toList()));
    }
}
