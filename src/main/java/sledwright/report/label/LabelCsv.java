package sledwright.report.label;

import sledwright.desk.view.LabelView;
import sledwright.report.text.Csv;

/** Modules read from labels as rows of memory.csv. */
public final class LabelCsv {

    private LabelCsv() {
    }

    /** One row of memory.csv for each module. */
    public static String of(LabelView view) {
        return Csv.write(LabelView.COLUMNS, view.rows().stream().map(row -> LabelView.cells(row).stream()
                .map(cell -> cell.orElse("")).toList()).toList());
    }
}
