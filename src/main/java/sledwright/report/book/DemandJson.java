package sledwright.report.book;

import java.math.BigDecimal;
import java.util.List;
import sledwright.book.PastDemand;
import sledwright.book.PastDemand.AskedClass;
import sledwright.report.text.Json;
import sledwright.words.Numbers;

/** What was asked for, offered and bought, as JSON. */
public record DemandJson(String from, String until, int months, String currency, List<Asked> classes, List<String> unread) {

    /** Alike requests; {@code winRate} and {@code priceAccepted} are null where nothing was decided or bought. */
    public record Asked(String name, int machines, List<Integer> asked, List<Integer> bought, List<Integer> unmet, List<Integer> orders,
                        int lost, int open, BigDecimal winRate, BigDecimal priceAccepted) {

        private static Asked of(AskedClass one) {
            return new Asked(one.name(), one.request().machines(), one.asked(), one.bought(), one.unmet(), one.orders(),
                    one.lost(), one.open(),
                    one.winRate().isEmpty() ? null : Numbers.decimal(one.winRate().getAsDouble()), one.accepted().orElse(null));
        }
    }

    public static String of(PastDemand demand) {
        return Json.of(new DemandJson(demand.from().toString(), demand.until().toString(), demand.months(), demand.currency(),
                demand.classes().stream().map(Asked::of).toList(), demand.unread().stream().map(Object::toString).toList()));
    }
}
