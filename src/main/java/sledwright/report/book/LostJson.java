package sledwright.report.book;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.List;
import sledwright.book.PastDemand;
import sledwright.report.text.Json;

/** Quotes that came to nothing, as JSON. */
public record LostJson(String from, String until, String currency, List<Reason> reasons, List<Quote> quotes) {

    /** Quotes that were lost for one reason; an amount is null where it is not known of any. */
    public record Reason(String reason, int quotes, BigDecimal tooDear, BigDecimal aboveOthers) {
    }

    /** One quote. */
    public record Quote(String number, String customer, String state, String reason, @JsonUnwrapped Amounts amounts, String currency) {

        private static Quote of(PastDemand.Lost one) {
            return new Quote(one.quote().number().toString(), one.quote().customer(), one.quote().state().label(), one.reason(),
                    new Amounts(one.quote().offered().price().orElse(null), one.price().orElse(null), one.wouldPay().orElse(null),
                    one.tooDear().orElse(null), one.aboveOthers().orElse(null)), one.currency());
        }
    }

    /**
     * An amount is null where it is not known.
     *
     * @param price      what all machines came to
     * @param askedPrice what the customer was asked to pay in its place; the others are held against it
     */
    public record Amounts(BigDecimal price, BigDecimal askedPrice, BigDecimal wouldPay, BigDecimal tooDear, BigDecimal aboveOthers) {
    }

    public static String of(PastDemand demand) {
        return Json.of(new LostJson(demand.from().toString(), demand.until().toString(), demand.currency(),
                LostReport.reasons(demand).stream().map(one -> new Reason(one.reason(), one.quotes(), one.tooDear().orElse(null),
                one.aboveOthers().orElse(null))).toList(), demand.lost().stream().map(Quote::of).toList()));
    }
}
