package sledwright.report.catalog;

import java.util.List;
import sledwright.desk.view.CatalogView;
import sledwright.report.text.Csv;

/** The kinds of a catalogue as comma-separated values. */
public final class CatalogCsv {

    private CatalogCsv() {
    }

    /** One row for each kind that is counted. */
    public static String of(CatalogView view) {
        return Csv.write(List.of("kind", "count"), view.counts().entrySet().stream()
                .map(entry -> List.<Object>of(entry.getKey(), entry.getValue())).toList());
    }
}
