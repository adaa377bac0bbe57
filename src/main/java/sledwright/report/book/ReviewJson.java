package sledwright.report.book;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sledwright.book.Reviewed;
import sledwright.report.text.Json;

/**
 * Open quotes against today's catalogue, as JSON.
 *
 * @param counts outcome -> how many quotes
 */
public record ReviewJson(Map<String, Integer> counts, List<Held> quotes) {

    /** One quote; a price is null where there is none. */
    public record Held(String number, String customer, String outcome, BigDecimal was, BigDecimal is, String currency,
                       List<String> soldOut) {

        private static Held of(Reviewed one) {
            return new Held(one.quote().number().toString(), one.quote().customer(), one.outcome().label(),
                    one.quote().offered().price().orElse(null), one.now().orElse(null), one.quote().offered().currency(), one.soldOut());
        }
    }

    public static String of(List<Reviewed> all) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        ReviewReport.counts(all).forEach((outcome, count) -> counts.put(outcome.label(), count));
        return Json.of(new ReviewJson(counts, all.stream().map(Held::of).toList()));
    }
}
