package sledwright.report.check;

import java.util.ArrayList;
import java.util.List;
import sledwright.desk.view.CheckView;
import sledwright.report.text.Csv;
import sledwright.rules.Violation;

/** A verdict as comma-separated values. */
public final class CheckCsv {

    private CheckCsv() {
    }

    /** One row for each broken rule. */
    public static String of(CheckView view) {
        List<List<Object>> rows = new ArrayList<>();
        for (Violation violation : view.violations()) {
            rows.add(List.of(violation.rule(), violation.where(), violation.message()));
        }
        return Csv.write(List.of("rule", "where", "message"), rows);
    }
}
