package sledwright.report.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sledwright.compare.Cost;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.CompareView;
import sledwright.desk.view.CompareView.CurveView;
import sledwright.desk.view.CompareView.PointView;
import sledwright.generator.Axis;
import sledwright.report.chart.Chart;
import sledwright.report.chart.Chart.Line;
import sledwright.report.chart.Chart.Mark;
import sledwright.report.chart.Chart.Spot;
import sledwright.report.page.Wording;

/** The charts of a comparison: one for each figure and cost. */
final class CompareCharts {

    private final CompareView view;
    private final Wording words;
    private final CompareWords said;

    /** @param words how money and figures are written */
    CompareCharts(CompareView view, Wording words) {
        this.view = view;
        this.words = words;
        said = new CompareWords(view, words);
    }

    /** The chart of a figure over a cost; empty where no curve has a point. */
    Optional<Chart> of(Axis axis, Cost cost) {
        List<CurveView> curves = view.curves(axis, cost).stream().filter(curve -> !curve.points().isEmpty()).toList();
        if (curves.isEmpty()) {
            return Optional.empty();
        }
        List<Line> lines = curves.stream().map(curve -> new Line(curve.axes().platform().orElse(words.say("compare.all")),
                curve.points().stream().map(point -> spot(curve, point)).toList())).toList();
        return Optional.of(new Chart(said.title(axis, cost), description(curves), said.cost(cost) + ", " + view.topic().currency(),
                said.figureAndUnit(axis), words.locale(), axis.lessIsBetter(), lines));
    }

    private Spot spot(CurveView curve, PointView point) {
        Optional<String> call = view.scope().byPlatform() ? Optional.empty() : call(curve, point);
        Mark mark = view.scope().byPlatform() ? Mark.NONE : point.marks().knee() && point.marks().bestPerUnit() ? Mark.STAR
                : point.marks().knee() ? Mark.DIAMOND
                : point.marks().bestPerUnit() ? Mark.TRIANGLE : Mark.NONE;
        return new Spot(point.cost().doubleValue(), point.figure(), words(curve, point), Optional.of(link(curve, point)), mark, call,
                point.marks().foremost());
    }

    /** What a page knows a point by. */
    static String link(CurveView curve, PointView point) {
        return String.join("-", curve.axes().figure().label(), curve.axes().cost().label(), curve.axes().platform().orElse("all"),
                String.valueOf(curve.points().indexOf(point) + 1));
    }

    private Optional<String> call(CurveView curve, PointView point) {
        if (!point.marks().knee() && !point.marks().bestPerUnit()) {
            return Optional.empty();
        }
        // What the mark means stands beside the chart, which has no room for it.
        return Optional.of(words.say("compare.call", said.amount(curve.axes().figure(), point.figure()), words.money(point.cost())));
    }

    private String words(CurveView curve, PointView point) {
        BuildView build = view.build(point.build());
        String bought = "%s, %s".formatted(words.money(point.cost()), said.amount(curve.axes().figure(), point.figure()));
        List<String> parts = new ArrayList<>(List.of(bought,
                words.say("compare.spot", point.build(), build.bare().platform(), said.processors(build), said.memory(build))));
        parts.addAll(said.marks(point));
        return String.join("; ", parts);
    }

    private String description(List<CurveView> curves) {
        CurveView first = curves.get(0);
        PointView from = first.points().get(0);
        PointView to = first.points().get(first.points().size() - 1);
        return curves.size() > 1 ? words.say("compare.stairs.platforms", curves.size())
                : words.say("compare.stairs", first.points().size(), said.amount(first.axes().figure(), from.figure()),
                words.money(from.cost()),
                        said.amount(first.axes().figure(), to.figure()), words.money(to.cost()));
    }
}
