package sledwright.report.restock;

import java.util.ArrayList;
import java.util.List;
import sledwright.desk.view.RestockView;
import sledwright.report.restock.RestockTables.Content;
import sledwright.report.workbook.Workbooks;
import sledwright.report.workbook.WorkbookSheet;

/** A restocking plan as a workbook: a sheet for each table, and one that says what was reckoned with. */
public final class RestockSheets {

    private RestockSheets() {
    }

    public static byte[] of(RestockView view) {
        int digits = Math.max(0, view.shop().currency().getDefaultFractionDigits());
        List<WorkbookSheet> sheets = new ArrayList<>();
        for (Content content : RestockTables.of(view)) {
            sheets.add(new WorkbookSheet(content.name(), content.columns().stream().map(column -> switch (column.holds()) {
                case MONEY -> WorkbookSheet.Column.amounts(column.header(), digits);
                case MEAN, SHARE -> WorkbookSheet.Column.amounts(column.header(), 1);
                case WORDS, COUNT -> WorkbookSheet.Column.of(column.header());
            }).toList(), content.rows()));
        }
        List<List<Object>> about = new ArrayList<>();
        RestockNotes.of(view).forEach((term, meaning) -> about.add(List.of(term, meaning)));
        RestockTables.of(view).stream().filter(content -> !content.note().isEmpty())
                .forEach(content -> about.add(List.of(content.name(), content.note())));
        sheets.add(new WorkbookSheet("About", List.of(WorkbookSheet.Column.of("What"), WorkbookSheet.Column.of("Says")), about));
        return Workbooks.of(view.plan().request().name() + ": what to stock", view.shop().pricedOn(), sheets);
    }
}
