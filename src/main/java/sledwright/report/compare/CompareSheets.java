package sledwright.report.compare;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.CompareView;
import sledwright.desk.view.CompareView.CurveView;
import sledwright.desk.view.CompareView.PointView;
import sledwright.desk.view.Line;
import sledwright.domain.Catalog;
import sledwright.metrics.Figures;
import sledwright.report.offer.EquipmentWords;
import sledwright.report.offer.OfferLine;
import sledwright.report.page.Wording;
import sledwright.report.text.Csv;
import sledwright.report.workbook.WorkbookSheet;
import sledwright.report.workbook.WorkbookSheet.Column;
import sledwright.report.workbook.Workbooks;
import sledwright.words.Numbers;

/** A comparison as a workbook: every point, every build, every part of each build, and what the columns mean. */
public final class CompareSheets {

    private final CompareView view;
    private final Catalog shop;
    private final Wording words;
    private final CompareWords said;
    private final int digits;

    private CompareSheets(CompareView view, Catalog shop) {
        this.view = view;
        this.shop = shop;
        words = Wording.of(shop);
        said = new CompareWords(view, words);
        digits = Math.max(0, view.builds().stream().flatMap(build -> build.price().stream()).mapToInt(BigDecimal::scale).findFirst()
                .orElse(0));
    }

    public static byte[] of(CompareView view, Catalog shop) {
        CompareSheets sheets = new CompareSheets(view, shop);
        return Workbooks.of(sheets.words.say("compare.named", view.topic().request()), shop.pricedOn(),
                List.of(sheets.points(), sheets.builds(), sheets.parts(), sheets.about()));
    }

    private Column column(String key) {
        return Column.of(words.say(key));
    }

    private List<Column> columns(String... keys) {
        return Stream.of(keys).map(this::column).toList();
    }

    private Column money(String key) {
        return Column.amounts(words.say(key) + ", " + view.topic().currency(), digits);
    }

    private Column unitPrice(String key) {
        return Column.amounts(words.say(key) + ", " + view.topic().currency(), digits + 2);
    }

    private WorkbookSheet points() {
        List<Column> columns = Stream.of(columns("compare.x.figure", "compare.x.by", "compare.x.of"), List.of(money("compare.x.cost")),
                columns("compare.x.value", "compare.x.unit"), List.of(unitPrice("compare.term.unit"), money("compare.term.extra"),
                        column("compare.x.extra"), unitPrice("compare.each.extra")),
                columns("compare.x.knee", "compare.x.best", "compare.x.ahead", "compare.x.certain"),
                List.of(money("column.price"), money("compare.x.energy"), money("compare.cost.TOTAL")),
                columns("compare.machine", "compare.platform", "book.processor", "what.memory")).flatMap(List::stream).toList();
        List<List<Object>> rows = new ArrayList<>();
        view.curves().forEach(curve -> curve.points().forEach(point -> rows.add(point(curve, point))));
        return new WorkbookSheet(words.say("compare.points"), columns, rows);
    }

    private List<Object> point(CurveView curve, PointView point) {
        BuildView build = view.build(point.build());
        return List.of(said.figure(curve.axes().figure()), said.cost(curve.axes().cost()),
                curve.axes().platform().orElse(words.say("compare.all")), point.cost(),
                Numbers.decimal(point.figure()), curve.axes().figure().unitAfter(""), Csv.cell(point.perUnit()),
                Csv.cell(point.extra().map(CompareView.Extra::cost)), Csv.cell(point.extra().map(extra -> Numbers.decimal(extra.figure()))),
                Csv.cell(point.extra().map(CompareView.Extra::perUnit)),
                point.marks().knee(), point.marks().bestPerUnit(), point.marks().foremost(), point.marks().proved(), point.paid().price(),
                Csv.cell(point.paid().energy()),
                Csv.cell(point.paid().energy().map(energy -> point.paid().total())), point.build(), build.bare().platform(),
                said.processors(build), said.memory(build));
    }

    private WorkbookSheet builds() {
        List<Column> columns = Stream.of(List.of(column("compare.machine"), money("column.price")),
                columns("fact.machines", "compare.platform", "book.processor", "book.processors", "compare.x.cooling", "compare.x.supply",
                        "compare.x.supplies", "book.modules", "compare.x.equipment", "enclosures", "book.cores", "book.memory",
                        "book.usable",
                        "book.speed", "book.bandwidth", "book.throughput", "compare.x.estimated", "book.load", "compare.x.wall",
                        "figure.spare-slots", "compare.x.days")).flatMap(List::stream).toList();
        EquipmentWords equipment = new EquipmentWords(words);
        List<List<Object>> rows = new ArrayList<>();
        for (BuildView build : view.builds()) {
            Figures figures = build.figures();
            rows.add(List.of(rows.size() + 1, Csv.cell(build.price()), build.count(), build.bare().platform(),
                    build.bare().processorSku().orElse(""), build.bare().processors(), build.bare().cooling().orElse(""),
                    build.bare().supply().orElse(""),
                    build.bare().supplies(), said.modules(build), equipment.joined(build.heaviest().fitout()),
                    equipment.enclosures(build.heaviest().fitout()).orElse(""), figures.cores(), figures.memoryGb(),
                    Numbers.decimal(figures.usableGb()),
                    figures.speed().mts(), Numbers.decimal(figures.bandwidthGbs()), Numbers.decimal(figures.throughput()),
                    figures.throughputEstimated(), Numbers.decimal(figures.loadW()),
                    Csv.cell(figures.wallW().stream().mapToObj(Numbers::decimal).findFirst()), figures.spareSlots(), build.leadDays()));
        }
        return new WorkbookSheet(words.say("compare.machines"), columns, rows);
    }

    /** Lots and costs have columns where they are shown. */
    private WorkbookSheet parts() {
        boolean lots = view.builds().stream().flatMap(build -> build.lines().stream()).anyMatch(Line::tellsLot);
        List<Column> columns = new ArrayList<>(columns("compare.machine", "column.part", "book.description", "column.condition",
                "compare.x.days", "column.units"));
        columns.addAll(List.of(money("column.each"), money("column.price")));
        if (lots) {
            columns.addAll(List.of(column("book.lot"), column("book.from"), money("book.cost")));
        }
        List<List<Object>> rows = new ArrayList<>();
        for (int number = 1; number <= view.builds().size(); number++) {
            for (Line line : view.build(number).lines()) {
                Optional<Line.Source> source = line.source();
                OfferLine.Goods goods = OfferLine.goods(line);
                List<Object> cells = new ArrayList<>(List.of(number, goods.sku(), goods.shownName(words),
                        goods.shownCondition(words), Csv.cell(source.map(Line.Source::leadDays)), line.quantity(),
                        line.unitPrice(), line.total()));
                if (lots) {
                    cells.addAll(List.of(source.map(Line.Source::lot).orElse(""), source.map(Line.Source::supplier).orElse(""),
                            Csv.cell(source.flatMap(Line.Source::unitCost))));
                }
                rows.add(cells);
            }
        }
        return new WorkbookSheet(words.say("book.parts"), columns, rows);
    }

    private WorkbookSheet about() {
        List<List<Object>> rows = new ArrayList<>(List.of(List.of(words.say("fact.reference"), view.topic().request()),
                List.of(words.say("fact.machines"), view.topic().machines()),
                List.of(words.say("compare.x.currency"), view.topic().currency()),
                List.of(words.say("compare.x.priced"), shop.pricedOn()), List.of(words.say("compare.x.certain"), said.status())));
        view.scope().energy().ifPresent(energy -> rows.addAll(Arrays.asList(
                List.<Object>of(words.say("compare.x.years"), Numbers.decimal(energy.years())),
                List.<Object>of(words.say("compare.x.kwh") + ", " + view.topic().currency(), view.scope().pricePerKwh().orElseThrow()),
                List.<Object>of(words.say("compare.x.duty"), Numbers.decimal(energy.duty())))));
        said.notes(shop.stationery()).forEach(note -> rows.add(List.of(note.term(), note.meaning())));
        return new WorkbookSheet(words.say("book.about"), columns("book.what", "book.says"), rows);
    }
}
