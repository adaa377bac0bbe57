package sledwright.report.upgrade;

import java.util.List;
import sledwright.desk.view.Line;
import sledwright.desk.view.UpgradeView;
import sledwright.report.text.Csv;

/** An upgrade as comma-separated values. */
public final class UpgradeCsv {

    private UpgradeCsv() {
    }

    /** One row for each line of an upgrade: what stays, what is paid for, what is pulled. */
    public static String of(UpgradeView view) {
        List<String> header = List.of("upgrade", "status", "currency", "kind", "sku", "description", "lot", "supplier", "condition",
                "lead_days",
                "unit_cost", "quantity", "unit_price", "total");
        List<Line> lines = view.upgrade().map(done -> done.build().lines()).orElse(List.of());
        return Csv.write(header,
                lines.stream().map(line -> List.<Object>of(view.topic().request(), view.proof().status().label(), view.topic().currency(),
                line.kind().label(),
                line.sku(), line.description(), line.source().map(Line.Source::lot).orElse(""), line.source().map(Line.Source::supplier)
                .orElse(""), line.source().map(Line.Source::condition).orElse(""), line.source().<Object>map(Line.Source::leadDays)
                .orElse(""), Csv.cell(line.source().flatMap(Line.Source::unitCost)), line.quantity(),
                line.unitPrice(), line.total())).toList());
    }
}
