package sledwright.report.book;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sledwright.book.Allocated;
import sledwright.planner.allot.LotName;
import sledwright.report.text.Json;

/**
 * Promised machines, drawn anew from today's stock, as JSON.
 *
 * @param counts   fate -> how many promises
 * @param strained lots of which more is promised than there is
 */
public record AllocationJson(boolean applied, Map<String, Integer> counts, List<Promise> promises, List<String> strained,
                             QualityJson quality) {

    /** What becomes of a promise. */
    public record Promise(@JsonUnwrapped Subject subject, @JsonUnwrapped Cost price, @JsonUnwrapped Lots lots, List<String> lacks,
                          List<String> ways) {

        private static Promise of(Allocated.Drawn one) {
            return new Promise(new Subject(one.quote().number().toString(), one.quote().customer(), one.fate().label(),
                    one.quote().offered().machines()), new Cost(one.quote().offered().price().orElse(null),
                    one.quote().offered().pays().orElse(null), one.cost().orElse(null),
                    one.quote().offered().currency()),
                    new Lots(Units.all(one.lots().units()), Units.all(one.lots().fresh()), Units.all(one.lots().given())), one.lacks(),
                    one.ways());
        }
    }

    /** Whose it is. */
    public record Subject(String number, String customer, String fate, int machines) {
    }

    /**
     * What it came to when the customer was told and what it costs now; null where there is none.
     *
     * @param askedPrice what the customer was asked to pay in the place of the first, before tax
     */
    public record Cost(BigDecimal told, BigDecimal askedPrice, BigDecimal cost, String currency) {
    }

    /** All that it takes, and of that what is new; and what it gives back. */
    public record Lots(List<Units> takes, List<Units> fresh, List<Units> given) {
    }

    /** Units of a lot. */
    public record Units(String sku, String lot, int units) {

        private static List<Units> all(Map<LotName, Integer> units) {
            return new TreeMap<>(units).entrySet().stream()
                    .map(lot -> new Units(lot.getKey().sku(), lot.getKey().lot(), lot.getValue())).toList();
        }
    }

    /** How good it is; {@code leastCost} is null where it is not known. */
    public record QualityJson(Allocated.Figures found, Allocated.Figures greedy, int leastBroken, int leastChanged, BigDecimal leastCost,
                              String currency) {

        private static QualityJson of(Allocated.Quality quality) {
            return new QualityJson(quality.found(), quality.greedy(), quality.leastBroken(),
                    quality.leastChanged(), quality.leastCost().orElse(null), quality.currency());
        }
    }

    public static String of(Allocated allocated, boolean applied) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        AllocationReport.counts(allocated).forEach((fate, count) -> counts.put(fate.label(), count));
        return Json.of(new AllocationJson(applied, counts, allocated.promises().stream().map(Promise::of).toList(),
                allocated.strained().stream().map(Object::toString).toList(), QualityJson.of(allocated.quality())));
    }
}
