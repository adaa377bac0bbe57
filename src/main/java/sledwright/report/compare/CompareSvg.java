package sledwright.report.compare;

import java.util.List;
import java.util.Optional;
import sledwright.desk.view.CompareView;
import sledwright.domain.Catalog;
import sledwright.report.chart.Chart;
import sledwright.report.chart.SvgChart;
import sledwright.report.page.Wording;

/** The charts of a comparison as one drawing. */
public final class CompareSvg {

    private CompareSvg() {
    }

    /** Every chart below the one before; where no build is valid a drawing without any. */
    public static String of(CompareView view, Catalog shop) {
        Wording words = Wording.of(shop);
        CompareCharts made = new CompareCharts(view, words);
        List<Chart> charts = view.costs().stream().flatMap(cost -> view.axes().stream().map(axis -> made.of(axis, cost)))
                .flatMap(Optional::stream).toList();
        return SvgChart.file(words.say("compare.named", view.topic().request()), charts);
    }
}
