package sledwright.report.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import sledwright.report.sheet.SheetView.Berth;
import sledwright.report.sheet.SheetView.Sheet;
import sledwright.report.sheet.SheetView.Which;
import sledwright.report.text.Csv;

/**
 * The pick list as a table: a row for each lot that parts of a sheet come from, then one for each part that comes out; of an order last the
 * parts of its enclosures, which have no sheet.
 */
public final class SheetCsv {

    private static final List<String> COLUMNS = List.of("sheet", "machines", "action", "sku", "description", "lot", "supplier", "units",
            "line", "machine", "enclosure", "bay");

    private SheetCsv() {
    }

    public static String of(SheetView view) {
        List<List<Object>> rows = new ArrayList<>();
        for (int number = 1; number <= view.sheets().size(); number++) {
            Sheet sheet = view.sheets().get(number - 1);
            int count = number;
            List<Object> which = sheet.which().map(SheetCsv::which).orElse(List.of("", "", "", ""));
            sheet.moved().picks().forEach(pick -> rows.add(row(List.of(count, sheet.machines(), "pick", pick.sku(), pick.description(),
                    pick.lot(), pick.supplier(), pick.units()), which)));
            sheet.moved().pulled().forEach(part -> rows.add(row(List.of(count, sheet.machines(), "pull", part.sku(), part.description(), "",
                    "", part.units()), which)));
        }
        view.order().ifPresent(order -> order.lots().forEach(fetch -> fetch.shares().stream().filter(share -> share.line().isEmpty())
                .forEach(share -> rows.add(row(List.of("", "", "pick", fetch.pick().sku(), fetch.pick().description(), fetch.pick().lot(),
                        fetch.pick().supplier(), share.units()), List.of("", "", share.first(), ""))))));
        return Csv.write(COLUMNS, rows);
    }

    private static List<Object> which(Which which) {
        return List.of(which.line(), which.number(), which.berth().<Object>map(Berth::enclosure).orElse(""),
                which.berth().<Object>map(Berth::bay).orElse(""));
    }

    private static List<Object> row(List<Object> part, List<Object> which) {
        return Stream.concat(part.stream(), which.stream()).toList();
    }
}
