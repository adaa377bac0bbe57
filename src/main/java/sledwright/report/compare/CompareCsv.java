package sledwright.report.compare;

import java.util.List;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.CompareView;
import sledwright.desk.view.CompareView.CurveView;
import sledwright.desk.view.CompareView.Extra;
import sledwright.desk.view.CompareView.PointView;
import sledwright.metrics.Figures;
import sledwright.report.build.MachineCells;
import sledwright.report.text.Csv;
import sledwright.words.Numbers;

/** The points of a comparison as rows of a table: numbers, and texts, of which the empty one stands for nothing. */
public final class CompareCsv {

    private static final List<String> HEADER = MachineCells.between(
            List.of("request", "status", "currency", "figure", "cost", "curve_platform", "cost_amount", "value", "per_unit", "extra_cost",
                    "extra_value", "extra_per_unit", "knee", "best_per_unit", "foremost", "proved", "price", "energy_cost", "total_cost",
                    "build"),
            MachineCells.COLUMNS,
            List.of("cores", "memory_gb", "usable_gb", "memory_mts", "bandwidth_gbs", "throughput", "throughput_estimated", "load_w",
                    "wall_w", "lead_days"));

    private CompareCsv() {
    }

    public static String of(CompareView view) {
        return Csv.write(HEADER, view.curves().stream()
                .flatMap(curve -> curve.points().stream().map(point -> row(view, curve, point))).toList());
    }

    private static List<Object> row(CompareView view, CurveView curve, PointView point) {
        BuildView build = view.build(point.build());
        Figures figures = build.figures();
        return MachineCells.between(List.of(view.topic().request(), curve.status().label(), view.topic().currency(),
                curve.axes().figure().label(),
                curve.axes().cost().label(), curve.axes().platform().orElse(""), point.cost(), Numbers.decimal(point.figure()),
                Csv.cell(point.perUnit()), Csv.cell(point.extra().map(Extra::cost)),
                Csv.cell(point.extra().map(extra -> Numbers.decimal(extra.figure()))), Csv.cell(point.extra().map(Extra::perUnit)),
                String.valueOf(point.marks().knee()), String.valueOf(point.marks().bestPerUnit()),
                String.valueOf(point.marks().foremost()), String.valueOf(point.marks().proved()), point.paid().price(),
                Csv.cell(point.paid().energy()), Csv.cell(point.paid().energy().map(energy -> point.paid().total())), point.build()),
                MachineCells.of(build), List.of(figures.cores(), figures.memoryGb(),
                Numbers.decimal(figures.usableGb()), figures.speed().mts(), Numbers.decimal(figures.bandwidthGbs()),
                Numbers.decimal(figures.throughput()), String.valueOf(figures.throughputEstimated()),
                Numbers.decimal(figures.loadW()), Csv.cell(figures.wallW().stream().mapToObj(Numbers::decimal).findFirst()),
                build.leadDays()));
    }
}
