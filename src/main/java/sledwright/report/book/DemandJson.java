package sledwright.report.book;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.List;
import sledwright.book.PastDemand;
import sledwright.book.PastDemand.AskedClass;
import sledwright.report.text.Json;
import sledwright.words.Numbers;

/** What was asked for, offered and bought, as JSON. */
public record DemandJson(String from, String until, int months, String currency, List<Asked> classes, List<String> unread) {

    /** Alike requests. */
    public record Asked(String name, int machines, @JsonUnwrapped Months months, @JsonUnwrapped Outcome outcome) {

        private static Asked of(AskedClass one) {
            return new Asked(one.name(), one.request().machines(),
                    new Months(one.months().asked(), one.months().bought(), one.months().unmet(), one.orders()),
                    new Outcome(one.lost(), one.open(),
                    one.winRate().isEmpty() ? null : Numbers.decimal(one.winRate().getAsDouble()), one.accepted().orElse(null)));
        }
    }

    /** Quotes of each month. */
    public record Months(List<Integer> asked, List<Integer> bought, List<Integer> unmet, List<Integer> orders) {
    }

    /** The last two are null where nothing was decided or bought. */
    public record Outcome(int lost, int open, BigDecimal winRate, BigDecimal priceAccepted) {
    }

    public static String of(PastDemand demand) {
        return Json.of(new DemandJson(demand.from().toString(), demand.until().toString(), demand.months(), demand.currency(),
                demand.classes().stream().map(Asked::of).toList(), demand.unread().stream().map(Object::toString).toList()));
    }
}
