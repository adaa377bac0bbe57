package sledwright.report.offer;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sledwright.desk.view.Line;
import sledwright.desk.view.Line.Source;
import sledwright.desk.view.OrderView;
import sledwright.desk.view.OrderView.Delivery;
import sledwright.domain.Lot;
import sledwright.report.page.Wording;
import sledwright.report.text.Csv;
import sledwright.report.workbook.WorkbookSheet;
import sledwright.report.workbook.WorkbookSheet.Column;

/**
 * What has to be ordered from each supplier for an order, a sheet each, at what a unit costs the shop where that is known. Nothing has
 * to be ordered from the shop's own shelf.
 */
final class PurchaseSheets {

    private final OrderView view;
    private final Wording words;
    private final int digits;

    PurchaseSheets(OrderView view, Wording words, int digits) {
        this.view = view;
        this.words = words;
        this.digits = digits;
    }

    List<WorkbookSheet> all() {
        List<WorkbookSheet> sheets = new ArrayList<>();
        for (Delivery delivery : view.contents().suppliers()) {
            if (!delivery.own()) {
                sheets.add(sheet(delivery.supplier(), sheets.size() + 1));
            }
        }
        return sheets;
    }

    private WorkbookSheet sheet(String supplier, int number) {
        List<Column> columns = List.of(column("column.part"), column("book.description"), column("column.condition"), column("book.lot"),
                column("column.units"), money("book.cost"), money("book.purchase.sum"), column("book.here"));
        List<List<Object>> rows = new ArrayList<>();
        Optional<BigDecimal> total = Optional.of(BigDecimal.ZERO.setScale(digits));
        int units = 0;
        for (Line line : view.contents().picks()) {
            Optional<Source> source = line.source().filter(from -> !Lot.OWN.contains(from.lot()) && isSame(from.supplier(), supplier));
            if (source.isPresent()) {
                Optional<BigDecimal> cost = source.get().unitCost().map(each -> each.multiply(BigDecimal.valueOf(line.quantity())));
                rows.add(row(line, source.get(), cost));
                total = total.flatMap(sum -> cost.map(sum::add));
                units += line.quantity();
            }
        }
        rows.add(List.of(words.say("sum.total"), "", "", "", units, "", Csv.cell(total), ""));
        return new WorkbookSheet(WorkbookSheet.nameOf("%s %s %s".formatted(words.say("book.purchase"), number, supplier)), columns, rows);
    }

    private List<Object> row(Line line, Source source, Optional<BigDecimal> cost) {
        return List.of(line.sku(), line.description(), words.say("condition." + source.condition()), source.lot(), line.quantity(),
                Csv.cell(source.unitCost()), Csv.cell(cost), view.day().in(source.leadDays()));
    }

    private static boolean isSame(String one, String other) {
        return Lot.supplierKey(one).equals(Lot.supplierKey(other));
    }

    private Column column(String key) {
        return Column.of(words.say(key));
    }

    private Column money(String key) {
        return Column.amounts("%s, %s".formatted(words.say(key), view.topic().currency()), digits);
    }
}
