package sledwright.report.offer;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import sledwright.desk.view.Audience;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.ForCustomers;
import sledwright.desk.view.Line;
import sledwright.desk.view.OrderAnswer;
import sledwright.desk.view.OrderView;
import sledwright.desk.view.OrderView.Filled;
import sledwright.desk.view.OrderView.Group;
import sledwright.desk.view.OrderView.Housed;
import sledwright.domain.Catalog;
import sledwright.metrics.Figures;
import sledwright.report.page.Wording;
import sledwright.report.text.Csv;
import sledwright.report.workbook.WorkbookSheet;
import sledwright.report.workbook.WorkbookSheet.Column;
import sledwright.report.workbook.Workbooks;
import sledwright.words.Numbers;

/** The answer to an order as a workbook: machines, parts, sums and terms; for the shop what it orders from each supplier, too. */
public final class OrderWorkbook {

    private final OrderAnswer answer;
    private final Audience audience;
    private final OrderView view;
    private final Catalog shop;
    private final Wording words;
    private final int digits;

    private OrderWorkbook(OrderAnswer answer, Audience audience) {
        this.answer = answer;
        this.audience = audience;
        view = audience == Audience.SHOP ? answer.view() : ForCustomers.of(answer.view());
        shop = answer.job().catalog();
        words = Wording.of(shop);
        digits = Math.max(0, view.cost().total().scale());
    }

    public static byte[] of(OrderAnswer answer, Audience audience) {
        OrderWorkbook book = new OrderWorkbook(answer, audience);
        List<WorkbookSheet> sheets = new ArrayList<>(List.of(book.machines(), book.parts(), book.sums()));
        sheets.addAll(new PurchaseSheets(book.view, book.words, book.digits).all());
        sheets.add(book.about());
        return Workbooks.of(book.words.say("book.title", book.named().whole()), book.view.day().today(), sheets);
    }

    private Named named() {
        return new Named(words, view.topic().request(), answer.number());
    }

    private Column column(String key) {
        return Column.of(words.say(key));
    }

    private Column money(String key) {
        return Column.amounts("%s, %s".formatted(words.say(key), view.topic().currency()), digits);
    }

    private WorkbookSheet machines() {
        List<Column> columns = List.of(column("book.line"), column("book.build"), column("fact.machines"), column("book.machine"),
                column("book.processors"), column("book.processor"), column("book.modules"), column("book.cores"),
                column("book.memory"), column("book.usable"), column("book.speed"), column("book.bandwidth"), column("book.throughput"),
                column("book.load"), column("book.here"), money("column.price"));
        List<List<Object>> rows = new ArrayList<>();
        for (Filled line : view.contents().lines()) {
            for (Group group : line.builds()) {
                BuildView build = group.build();
                Figures figures = build.figures();
                rows.add(List.of(line.line().name(), group.number(), build.count(), build.bare().name(), build.bare().processors(),
                        build.bare().processorSku().orElse(""), SideBySide.modules(build, words), figures.cores(), figures.memoryGb(),
                        Numbers.decimal(figures.usableGb()), figures.speed().mts(), Numbers.decimal(figures.bandwidthGbs()),
                        Numbers.decimal(figures.throughput()), Numbers.decimal(figures.loadW()), view.day().in(build.leadDays()),
                        build.price().orElseThrow()));
            }
        }
        return new WorkbookSheet(words.say("book.machines"), columns, rows);
    }

    /** Lots, suppliers and costs have columns where they are shown. */
    private WorkbookSheet parts() {
        boolean lots = view.contents().picks().stream().anyMatch(Line::tellsLot);
        List<Column> columns = new ArrayList<>(List.of(column("book.line"), column("book.build"), column("column.part"),
                column("book.description"), column("column.condition"), column("book.here"), column("column.units"),
                money("column.each"), money("column.price")));
        if (lots) {
            columns.addAll(List.of(column("book.lot"), column("book.from"), money("book.cost")));
        }
        List<List<Object>> rows = new ArrayList<>();
        view.contents().lines().forEach(line -> line.builds().forEach(group -> group.build().lines()
                .forEach(part -> rows.add(part(line.line().name(), group.number(), part, lots)))));
        view.contents().enclosures().forEach(housed -> housed.lines()
                .forEach(part -> rows.add(part(words.say("order.enclosure", housed.number(), housed.filled().enclosure().sku()), "", part,
                lots))));
        BigDecimal delivery = view.cost().delivery();
        if (delivery.signum() != 0) {
            List<Object> cells = new ArrayList<>(List.of(words.say("order.delivery"), "", "", "", "", "", "", "", delivery));
            cells.addAll(lots ? List.of("", "", "") : List.of());
            rows.add(cells);
        }
        return new WorkbookSheet(words.say("book.parts"), columns, rows);
    }

    private List<Object> part(String line, Object build, Line part, boolean lots) {
        OfferLine.Goods goods = OfferLine.goods(part);
        Optional<Line.Source> source = part.source();
        List<Object> cells = new ArrayList<>(List.of(line, build, goods.sku(), goods.shownName(words), goods.shownCondition(words),
                source.<Object>map(from -> view.day().in(from.leadDays())).orElse(""), part.quantity(), part.unitPrice(), part.total()));
        if (lots) {
            cells.addAll(List.of(source.map(Line.Source::lot).orElse(""), source.map(Line.Source::supplier).orElse(""),
                    Csv.cell(source.flatMap(Line.Source::unitCost))));
        }
        return cells;
    }

    private WorkbookSheet sums() {
        List<List<Object>> rows = new ArrayList<>();
        view.contents().lines().forEach(line -> rows.add(List.of(line.line().name(), line.price())));
        for (Housed housed : view.contents().enclosures()) {
            rows.add(List.of(words.say("order.enclosure", housed.number(), housed.filled().enclosure().sku()), housed.price()));
        }
        if (view.cost().delivery().signum() != 0) {
            rows.add(List.of(words.say("order.delivery"), view.cost().delivery()));
        }
        PriceSums.amounts(view.sale().pays(), words.say("sum.total"), words).forEach((label, amount) -> rows.add(List.of(label, amount)));
        return new WorkbookSheet(words.say("book.sums"), List.of(column("book.what"), money("book.amount")), rows);
    }

    private WorkbookSheet about() {
        List<List<Object>> rows = new ArrayList<>();
        if (audience == Audience.SHOP) {
            rows.add(List.of("Internal", "Costs and lots: not for the customer."));
        }
        named().number().ifPresent(number -> rows.add(List.of(words.say("fact.number"), number)));
        rows.add(List.of(words.say("fact.reference"), view.topic().request()));
        rows.add(List.of(words.say("fact.date"), view.day().today()));
        view.day().validUntil().ifPresent(day -> rows.add(List.of(words.say("fact.valid"), day)));
        if (!answer.job().customer().isEmpty()) {
            rows.add(List.of(words.say("fact.customer"), String.join(", ", answer.job().customer())));
        }
        rows.add(List.of(words.say("book.from"), Stream.of(List.of(shop.name()), shop.stationery().address(),
                shop.stationery().contact()).flatMap(List::stream).reduce((one, other) -> one + ", " + other).orElseThrow()));
        view.contents().lines().stream().filter(line -> line.missing() > 0).forEach(line -> rows.add(List.of(words.say("book.missing"),
                words.say("order.short.line", words.figure(line.missing()), line.line().name()))));
        new TermsWords(words, shop, view.day()).all().forEach(term -> rows.add(List.of(words.say("terms"), term)));
        return new WorkbookSheet(words.say("book.about"), List.of(column("book.what"), column("book.says")), rows);
    }
}
