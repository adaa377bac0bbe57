package sledwright.report.compare;

import java.util.List;
import java.util.Map;
import sledwright.compare.Cost;
import sledwright.desk.view.CompareView;
import sledwright.desk.view.CompareView.CurveView;
import sledwright.desk.view.CompareView.PointView;
import sledwright.domain.Catalog;
import sledwright.generator.Axis;
import sledwright.report.build.BuildText;
import sledwright.report.chart.SvgChart;
import sledwright.report.page.Markup;
import sledwright.report.page.Pages;
import sledwright.report.page.Wording;
import sledwright.words.Numbers;
import sledwright.words.Sentences;

/** What money buys of one figure, for the page on which somebody asks: a chart whose points can be chosen, and a list of them. */
public final class ChartPiece {

    /** A point; choosing it asks for its figure. */
    public record Dot(String link, String price, String figure, String value, String build, String marks) {
    }

    private ChartPiece() {
    }

    /** The key of a request that asks for the figure of an axis. */
    private static String key(Axis axis) {
        return switch (axis) {
            case THROUGHPUT -> "require.throughput";
            case WORK -> "require.work";
            case CORES -> "require.cores";
            case BANDWIDTH -> "require.bandwidth_gbs";
            case MEMORY -> "require.memory_gb";
            case LOAD -> "limit.power_w";
        };
    }

    /** @param view of one figure over the price */
    public static String of(CompareView view, Catalog shop) {
        Wording words = Wording.english(shop);
        CurveView curve = view.curves().get(0);
        Object chart = new CompareCharts(view, words).of(curve.axes().figure(), Cost.PRICE)
                .map(drawn -> new Markup(SvgChart.of(drawn, SvgChart.Use.LIVE)));
        List<Dot> dots = curve.points().stream().map(point -> dot(view, curve, point, words)).toList();
        return Pages.filled("ask-chart.ftlh", Map.of("chart", chart, "dots", dots, "key", key(curve.axes().figure()),
                "figure", Sentences.capital(curve.figureWords())));
    }

    private static Dot dot(CompareView view, CurveView curve, PointView point, Wording words) {
        var build = view.build(point.build());
        String marks = point.marks().knee() && point.marks().bestPerUnit() ? "knee, best price of a unit" : point.marks().knee() ? "knee"
                : point.marks().bestPerUnit() ? "best price of a unit" : "";
        // To the safe side: whoever asks for so much gets this point.
        String value = (curve.axes().figure().lessIsBetter() ? Numbers.ceiling(point.figure()) : Numbers.floor(point.figure())).toString();
        return new Dot(CompareCharts.link(curve, point), words.money(point.cost()), words.figure(point.figure()), value,
                "%s, %s".formatted(BuildText.processors(build), BuildText.memory(build)), marks);
    }
}
