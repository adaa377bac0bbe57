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
import sledwright.report.build.BuildText;
import sledwright.report.build.FitoutCells;
import sledwright.report.workbook.WorkbookSheet;
import sledwright.report.workbook.WorkbookSheet.Column;
import sledwright.report.workbook.Workbooks;
import sledwright.words.Numbers;

/** A comparison as a workbook: every point, every build, every part of each build, and what the columns mean. */
public final class CompareSheets {

    private final CompareView view;
    private final Catalog shop;
    private final int digits;

    private CompareSheets(CompareView view, Catalog shop) {
        this.view = view;
        this.shop = shop;
        digits = Math.max(0, view.builds().stream().flatMap(build -> build.price().stream()).mapToInt(BigDecimal::scale).findFirst()
                .orElse(0));
    }

    public static byte[] of(CompareView view, Catalog shop) {
        CompareSheets sheets = new CompareSheets(view, shop);
        return Workbooks.of(view.request() + ": what money buys", shop.pricedOn(),
                List.of(sheets.points(), sheets.builds(), sheets.parts(), sheets.about()));
    }

    private Column money(String header) {
        return Column.amounts(header + ", " + view.currency(), digits);
    }

    private Column unitPrice(String header) {
        return Column.amounts(header + ", " + view.currency(), digits + 2);
    }

    private WorkbookSheet points() {
        List<Column> columns = Stream.of(Column.of("Figure"), Column.of("By"), Column.of("Curve of"), money("Cost"), Column.of("Value"),
                Column.of("Unit"), unitPrice("Per unit"), money("Extra cost"), Column.of("Extra value"), unitPrice("Per extra unit"),
                Column.of("Knee"), Column.of("Best per unit"), Column.of("Ahead of all platforms"), Column.of("Proved"), money("Price"),
                money("Energy"), money("Total cost"), Column.of("Build"), Column.of("Platform"), Column.of("Processor"),
                Column.of("Memory")).toList();
        List<List<Object>> rows = new ArrayList<>();
        view.curves().forEach(curve -> curve.points().forEach(point -> rows.add(point(curve, point))));
        return new WorkbookSheet("Points", columns, rows);
    }

    private List<Object> point(CurveView curve, PointView point) {
        BuildView build = view.build(point.build());
        return List.of(curve.axis().noun(), curve.cost().noun(), curve.platform().orElse("all platforms"), point.cost(),
                Numbers.decimal(point.figure()), curve.axis().unit(), or(point.perUnit()), or(point.extra().map(CompareView.Extra::cost)),
                or(point.extra().map(extra -> Numbers.decimal(extra.figure()))), or(point.extra().map(CompareView.Extra::perUnit)),
                point.knee(), point.bestPerUnit(), point.foremost(), point.proved(), point.price(), or(point.energy()),
                or(point.energy().map(energy -> point.total())), point.build(), build.platform(), BuildText.processors(build),
                BuildText.memory(build));
    }

    private WorkbookSheet builds() {
        List<Column> columns = Stream.of(Column.of("Build"), money("Price"), Column.of("Machines"), Column.of("Platform"),
                Column.of("Processor"), Column.of("Processors"), Column.of("Heat sink"), Column.of("Supply"), Column.of("Supplies"),
                Column.of("Modules"), Column.of("Volumes"), Column.of("Driver"), Column.of("Cards"), Column.of("Extras"),
                Column.of("Enclosures"), Column.of("Cores"), Column.of("Memory, GB"), Column.of("Usable memory, GB"),
                Column.of("Memory speed, MT/s"), Column.of("Memory bandwidth, GB/s"), Column.of("Throughput"),
                Column.of("Throughput estimated"), Column.of("Load, W"), Column.of("From the wall, W"), Column.of("Spare slots"),
                Column.of("Lead time, days")).toList();
        List<List<Object>> rows = new ArrayList<>();
        for (BuildView build : view.builds()) {
            Figures figures = build.figures();
            rows.add(FitoutCells.between(List.of(rows.size() + 1, or(build.price()), build.count(), build.platform(),
                    build.processorSku().orElse(""), build.processors(), build.cooling().orElse(""), build.supply().orElse(""),
                    build.supplies(), BuildText.modules(build.heaviest().modules())), FitoutCells.of(build.heaviest().fitout()),
                    List.of(figures.cores(), figures.memoryGb(), Numbers.decimal(figures.usableGb()),
                    figures.speed().mts(), Numbers.decimal(figures.bandwidthGbs()), Numbers.decimal(figures.throughput()),
                    figures.throughputEstimated(), Numbers.decimal(figures.loadW()),
                    or(figures.wallW().stream().mapToObj(Numbers::decimal).findFirst()), figures.spareSlots(), build.leadDays())));
        }
        return new WorkbookSheet("Builds", columns, rows);
    }

    /** Lots and costs have columns where they are shown. */
    private WorkbookSheet parts() {
        boolean lots = view.builds().stream().flatMap(build -> build.lines().stream()).anyMatch(Line::tellsLot);
        List<Column> columns = new ArrayList<>(List.of(Column.of("Build"), Column.of("Kind"), Column.of("Part"),
                Column.of("Description"), Column.of("Condition"), Column.of("Days"), Column.of("Units"), money("Each"), money("Total")));
        if (lots) {
            columns.addAll(List.of(Column.of("Lot"), Column.of("From"), money("Cost of each")));
        }
        List<List<Object>> rows = new ArrayList<>();
        for (int number = 1; number <= view.builds().size(); number++) {
            for (Line line : view.build(number).lines()) {
                Optional<Line.Source> source = line.source();
                List<Object> cells = new ArrayList<>(List.of(number, line.kind().label(), line.sku(), line.description(),
                        source.map(Line.Source::condition).orElse(""), or(source.map(Line.Source::leadDays)), line.quantity(),
                        line.unitPrice(), line.total()));
                if (lots) {
                    cells.addAll(List.of(source.map(Line.Source::lot).orElse(""), source.map(Line.Source::supplier).orElse(""),
                            or(source.flatMap(Line.Source::unitCost))));
                }
                rows.add(cells);
            }
        }
        return new WorkbookSheet("Parts", columns, rows);
    }

    private WorkbookSheet about() {
        List<List<Object>> rows = new ArrayList<>(List.of(List.of("Request", view.request()), List.of("Machines", view.machines()),
                List.of("Currency", view.currency()), List.of("Prices of", shop.pricedOn()), List.of("Status", view.status().label())));
        view.energy().ifPresent(energy -> rows.addAll(Arrays.asList(List.<Object>of("Years of energy", Numbers.decimal(energy.years())),
                List.<Object>of("A kWh costs, " + view.currency(), view.pricePerKwh().orElseThrow()),
                List.<Object>of("Mean share of the load", Numbers.decimal(energy.duty())))));
        CompareNotes.of(view, shop.stationery()).forEach(note -> rows.add(List.of(note.term(), note.meaning())));
        return new WorkbookSheet("About", List.of(Column.of("What"), Column.of("Says")), rows);
    }

    private static Object or(Optional<?> value) {
        return value.<Object>map(found -> found).orElse("");
    }
}
