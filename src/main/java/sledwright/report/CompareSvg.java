package sledwright.report;

import java.util.List;
import java.util.Optional;
import sledwright.report.chart.Chart;
import sledwright.report.chart.SvgChart;

/** The charts of a comparison as one drawing. */
public final class CompareSvg {

    private CompareSvg() {
    }

    /** Every chart below the one before; where no build is valid a drawing without any. */
    public static String of(CompareView view) {
        List<Chart> charts = view.costs().stream().flatMap(cost -> view.axes().stream().map(axis -> CompareCharts.of(view, axis, cost)))
                .flatMap(Optional::stream).toList();
        return SvgChart.file(view.request() + ": what money buys", charts);
    }
}
