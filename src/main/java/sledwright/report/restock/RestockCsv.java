package sledwright.report.restock;

import java.util.List;
import sledwright.desk.view.RestockView;
import sledwright.report.text.Csv;

/** A stock plan as comma-separated values. */
public final class RestockCsv {

    private RestockCsv() {
    }

    /** One row for each purchase. */
    public static String of(RestockView view) {
        return Csv.write(List.of("sku", "supplier", "condition", "quantity", "unit_cost", "cost", "currency", "lead_days", "why"),
                view.plan().buys().stream()
                .map(buy -> List.<Object>of(buy.offer().sku(), buy.offer().supplier(), buy.offer().condition().label(),
                        buy.quantity(), view.amount(buy.offer().unitCost()), view.amount(buy.cost()), view.currency(), buy.offer()
                        .leadDays(), buy.why())).toList());
    }
}
