package sledwright.report.sheet;

import java.util.ArrayList;
import java.util.List;
import sledwright.report.sheet.SheetView.Sheet;
import sledwright.report.text.Csv;

/** The pick list as a table: a row for each lot that parts come from, then one for each part that comes out. */
public final class SheetCsv {

    private static final List<String> COLUMNS = List.of("sheet", "machines", "action", "sku", "description", "lot", "supplier", "units");

    private SheetCsv() {
    }

    public static String of(SheetView view) {
        List<List<Object>> rows = new ArrayList<>();
        for (int number = 1; number <= view.sheets().size(); number++) {
            Sheet sheet = view.sheets().get(number - 1);
            int count = number;
            sheet.picks().forEach(pick ->
                    rows.add(List.of(count, sheet.machines(), "pick", pick.sku(), pick.description(), pick.lot(), pick.supplier(),
                    pick.units())));
            sheet.pulled().forEach(part ->
                    rows.add(List.of(count, sheet.machines(), "pull", part.sku(), part.description(), "", "", part.units())));
        }
        return Csv.write(COLUMNS, rows);
    }
}
