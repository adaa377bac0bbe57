package sledwright.report.intake;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.catalog.CatalogTable;
import sledwright.catalog.intake.Formulas;
import sledwright.catalog.intake.TableExport;
import sledwright.input.Figure;
import sledwright.report.text.Json;
import sledwright.report.workbook.WorkbookSheet;
import sledwright.report.workbook.WorkbookSheet.Column;
import sledwright.report.workbook.Workbooks;

/** A table of a catalogue for spreadsheets and programs. */
public final class TableSheet {

    /** A table has no day; the first of zip files would be written as a moment, which differs between time zones. */
    private static final LocalDate NO_DAY = LocalDate.of(1980, 1, 2);

    private TableSheet() {
    }

    /** A table as JSON: figures as numbers, null where nothing stands. */
    public record Rows(String table, List<Map<String, Object>> rows) {
    }

    public static String json(TableExport export) {
        List<Map<String, Object>> rows = new ArrayList<>();
        for (Map<String, String> row : export.rows()) {
            Map<String, Object> cells = new LinkedHashMap<>();
            export.columns().forEach(column -> cells.put(column,
                    figure(export.table(), column, row).<Object>map(figure -> figure).orElse(row.get(column))));
            rows.add(cells);
        }
        return Json.of(new Rows(export.table().label(), rows));
    }

    /** A workbook of one sheet; the same rows always give the same bytes. */
    public static byte[] workbook(TableExport export) {
        List<List<Object>> rows = export.rows().stream()
                .map(row -> export.columns().stream().map(column -> cell(export.table(), column, row)).toList()).toList();
        String name = export.table().label();
        return Workbooks.of(name, NO_DAY, List.of(new WorkbookSheet(name, export.columns().stream().map(Column::of).toList(), rows)));
    }

    private static Object cell(CatalogTable table, String column, Map<String, String> row) {
        Optional<BigDecimal> figure = figure(table, column, row);
        return figure.isPresent() ? figure.get() : Formulas.defused(row.getOrDefault(column, ""));
    }

    private static Optional<BigDecimal> figure(CatalogTable table, String column, Map<String, String> row) {
        return table.isText(column) ? Optional.empty()
                : Optional.ofNullable(row.get(column)).flatMap(text -> Figure.parse(text, false).value());
    }
}
