package sledwright.report.book;

import java.util.ArrayList;
import java.util.List;
import sledwright.book.PastDemand;
import sledwright.book.PastDemand.AskedClass;
import sledwright.report.text.Csv;
import sledwright.words.Numbers;

/** What was asked for, offered and bought, as comma-separated values. */
public final class DemandReport {

    private DemandReport() {
    }

    /** A row for each month of each class; the months count from the first. */
    public static String csv(PastDemand demand) {
        List<List<Object>> rows = new ArrayList<>();
        for (AskedClass one : demand.classes()) {
            for (int month = 0; month < demand.months(); month++) {
                rows.add(List.of(one.name(), month + 1, demand.from().plusMonths(month).toString(), one.months().asked().get(month),
                        one.months().bought().get(month), one.months().unmet().get(month), one.orders().get(month),
                        one.winRate().isEmpty() ? "" : Numbers.decimal(one.winRate().getAsDouble()),
                        Csv.cell(one.accepted()), demand.currency()));
            }
        }
        return Csv.write(List.of("class", "month", "from", "asked", "bought", "unmet", "orders", "win_rate", "price_accepted", "currency"),
                rows);
    }
}
