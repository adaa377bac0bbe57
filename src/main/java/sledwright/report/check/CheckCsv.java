package sledwright.report.check;

import java.util.List;
import sledwright.desk.view.CheckView;
import sledwright.report.text.Csv;

/** A verdict as comma-separated values. */
public final class CheckCsv {

    private CheckCsv() {
    }

    /** One row for each broken rule. */
    public static String of(CheckView view) {
        return Csv.write(List.of("rule", "where", "message"), view.violations().stream()
                .map(violation -> List.<Object>of(violation.rule(), violation.where(), violation.message())).toList());
    }
}
