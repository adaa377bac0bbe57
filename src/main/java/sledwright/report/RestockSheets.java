package sledwright.report;

import java.util.ArrayList;
import java.util.List;
import sledwright.desk.view.RestockView;
import sledwright.report.RestockTables.Content;
import sledwright.report.sheets.Sheet;
import sledwright.report.sheets.Workbooks;

/** A restocking plan as a workbook: a sheet for each table, and one that says what was reckoned with. */
public final class RestockSheets {

    private RestockSheets() {
    }

    public static byte[] of(RestockView view) {
        int digits = Math.max(0, view.shop().currency().getDefaultFractionDigits());
        List<Sheet> sheets = new ArrayList<>();
        for (Content content : RestockTables.of(view)) {
            sheets.add(new Sheet(content.name(), content.columns().stream().map(column -> switch (column.holds()) {
                case MONEY -> Sheet.Column.amounts(column.header(), digits);
                case MEAN, SHARE -> Sheet.Column.amounts(column.header(), 1);
                case WORDS, COUNT -> Sheet.Column.of(column.header());
            }).toList(), content.rows()));
        }
        List<List<Object>> about = new ArrayList<>();
        RestockNotes.of(view).forEach((term, meaning) -> about.add(List.of(term, meaning)));
        RestockTables.of(view).stream().filter(content -> !content.note().isEmpty()).forEach(content -> about.add(List.of(content.name(), content.note())));
        sheets.add(new Sheet("About", List.of(Sheet.Column.of("What"), Sheet.Column.of("Says")), about));
        return Workbooks.of(view.plan().request().name() + ": what to stock", view.shop().pricedOn(), sheets);
    }
}
