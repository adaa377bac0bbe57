package sledwright.report.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import sledwright.compare.Cost;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.CompareView;
import sledwright.desk.view.CompareView.CurveView;
import sledwright.desk.view.CompareView.PointView;
import sledwright.generator.Axis;
import sledwright.metrics.Quantity;
import sledwright.report.build.BuildText;
import sledwright.report.chart.Chart;
import sledwright.report.chart.Chart.Line;
import sledwright.report.chart.Chart.Mark;
import sledwright.report.chart.Chart.Spot;
import sledwright.report.page.Wording;
import sledwright.words.Numbers;
import sledwright.words.Sentences;

/** The charts of a comparison: one for each figure and cost. */
final class CompareCharts {

    private final CompareView view;
    private final Wording words;

    /** @param words how money and figures are written */
    CompareCharts(CompareView view, Wording words) {
        this.view = view;
        this.words = words;
    }

    /** The chart of a figure over a cost; empty where no curve has a point. */
    Optional<Chart> of(Axis axis, Cost cost) {
        List<CurveView> curves = view.curves(axis, cost).stream().filter(curve -> !curve.points().isEmpty()).toList();
        if (curves.isEmpty()) {
            return Optional.empty();
        }
        List<Line> lines = curves.stream().map(curve -> new Line(curve.platform().orElse("all platforms"),
                curve.points().stream().map(point -> spot(curve, point)).toList())).toList();
        CurveView first = curves.get(0);
        return Optional.of(new Chart(title(axis, cost), description(curves), Sentences.capital(cost.noun()) + ", " + view.currency(),
                Sentences.capital(first.figureWords()), words.locale(), axis.lessIsBetter(), lines));
    }

    static String title(Axis axis, Cost cost) {
        return Sentences.capital(axis.noun()) + " by " + cost.noun();
    }

    private Spot spot(CurveView curve, PointView point) {
        Optional<String> call = view.byPlatform() ? Optional.empty() : call(curve, point);
        Mark mark = view.byPlatform() ? Mark.NONE : point.knee() && point.bestPerUnit() ? Mark.STAR : point.knee() ? Mark.DIAMOND
                : point.bestPerUnit() ? Mark.TRIANGLE : Mark.NONE;
        return new Spot(point.cost().doubleValue(), point.figure(), words(curve, point), Optional.of(link(curve, point)), mark, call,
                point.foremost());
    }

    /** What a page knows a point by. */
    static String link(CurveView curve, PointView point) {
        return String.join("-", curve.axis().label(), curve.cost().label(), curve.platform().orElse("all"),
                String.valueOf(curve.points().indexOf(point) + 1));
    }

    private Optional<String> call(CurveView curve, PointView point) {
        if (!point.knee() && !point.bestPerUnit()) {
            return Optional.empty();
        }
        String names = String.join(" and ", Stream.of(point.knee() ? "knee" : "", point.bestPerUnit() ? "best per unit" : "")
                .filter(name -> !name.isEmpty()).toList());
        return Optional.of("%s: %s for %s".formatted(names, amount(curve, point.figure()), words.money(point.cost())));
    }

    private String words(CurveView curve, PointView point) {
        BuildView build = view.build(point.build());
        List<String> parts = new ArrayList<>();
        parts.add("%s, %s".formatted(words.money(point.cost()), amount(curve, point.figure())));
        parts.add("build %s: %s, %s, %s".formatted(point.build(), build.platform(), BuildText.processors(build), BuildText.memory(build)));
        if (point.knee()) {
            parts.add("the knee");
        }
        if (point.bestPerUnit()) {
            parts.add("the best price of a unit");
        }
        return String.join("; ", parts);
    }

    private String amount(CurveView curve, double figure) {
        return words.figure(Quantity.rounded(figure)) + (curve.axis().unit().isEmpty() ? "" : " " + curve.axis().unit());
    }

    private String description(List<CurveView> curves) {
        CurveView first = curves.get(0);
        PointView from = first.points().get(0);
        PointView to = first.points().get(first.points().size() - 1);
        return curves.size() > 1
                ? "A staircase for each of %s platforms; filled points are ahead of all other platforms. The table has every point."
                .formatted(curves.size())
                : "A staircase of %s, from %s for %s to %s for %s. The table has every point.".formatted(
                Numbers.counted(first.points().size(), "point"), amount(first, from.figure()), words.money(from.cost()),
                amount(first, to.figure()), words.money(to.cost()));
    }
}
