package sledwright.report.compare;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.CompareView;
import sledwright.desk.view.CompareView.CurveView;
import sledwright.desk.view.CompareView.Extra;
import sledwright.desk.view.CompareView.PointView;
import sledwright.desk.view.CompareView.TogetherView;
import sledwright.report.build.BuildJson;
import sledwright.report.build.DayJson;
import sledwright.report.text.Json;
import sledwright.words.Numbers;

/**
 * A comparison as JSON.
 *
 * @param together null where nobody asked for it
 */
public record CompareJson(@JsonUnwrapped Head head, @JsonUnwrapped DayJson day, @JsonUnwrapped Scope scope, List<Curve> curves,
                          Together together, List<Numbered> builds) {

    /** What was asked, and whether all of it is proved. */
    public record Head(String request, String currency, String status, int machines) {
    }

    /** The first two are null where no energy is paid for and where no discount is given. */
    public record Scope(EnergyJson energy, BigDecimal discountPercent, boolean byPlatform) {
    }

    /** The energy that total costs count. */
    public record EnergyJson(BigDecimal years, BigDecimal pricePerKwh, BigDecimal duty) {
    }

    /** One figure over one cost. */
    public record Curve(@JsonUnwrapped Axes axes, String status, int provedPoints, BigDecimal bound, List<Point> points) {

        private static Curve of(CurveView curve) {
            return new Curve(new Axes(curve.axes().figure().label(), curve.axes().figure().unit(), curve.axes().figure().lessIsBetter(),
                    curve.axes().cost().label(),
                    curve.axes().platform().orElse(null)), curve.status().label(), curve.proved(), curve.bound().orElse(null),
                    curve.points().stream().map(Point::of).toList());
        }
    }

    /** @param platform null where the curve is of all */
    public record Axes(String figure, String unit, boolean lessIsBetter, String cost, String platform) {
    }

    /** One build of a curve, by its number. */
    public record Point(@JsonUnwrapped Worth worth, @JsonUnwrapped More more, @JsonUnwrapped Marks marks, @JsonUnwrapped Costs costs) {

        private static Point of(PointView point) {
            return new Point(new Worth(point.build(), point.cost(), Numbers.decimal(point.figure()), point.perUnit().orElse(null)),
                    point.extra().map(More::of).orElse(More.NONE),
                    new Marks(point.marks().knee(), point.marks().bestPerUnit(), point.marks().foremost()),
                    new Costs(point.paid().price(), point.paid().energy().orElse(null),
                    point.paid().energy().map(energy -> point.paid().total()).orElse(null)));
        }
    }

    /** What a point costs and gives. */
    public record Worth(int build, BigDecimal cost, BigDecimal value, BigDecimal perUnit) {
    }

    /** Against the point before; null for the first. */
    public record More(BigDecimal extraCost, BigDecimal extraValue, BigDecimal extraPerUnit) {

        private static final More NONE = new More(null, null, null);

        private static More of(Extra extra) {
            return new More(extra.cost(), Numbers.decimal(extra.figure()), extra.perUnit());
        }
    }

    /** What is said of a point. */
    public record Marks(boolean knee, boolean bestPerUnit, boolean foremost) {
    }

    /** The last two are null where no energy is paid for. */
    public record Costs(BigDecimal price, BigDecimal energyCost, BigDecimal totalCost) {
    }

    /** Builds of which each beats every cheaper one by a share. */
    public record Together(BigDecimal share, boolean complete, List<Integer> builds) {

        private static Together of(TogetherView all) {
            return new Together(Numbers.decimal(all.share()), all.complete(), all.builds());
        }
    }

    /** A build with its number, from 1. */
    public record Numbered(int number, @JsonUnwrapped BuildJson.Dated build) {
    }

    public static String of(CompareView view) {
        List<Numbered> builds = new ArrayList<>();
        for (BuildView build : view.builds()) {
            builds.add(new Numbered(builds.size() + 1, BuildJson.Dated.of(build, view.day())));
        }
        EnergyJson energy = view.scope().energy().map(paid ->
                new EnergyJson(Numbers.decimal(paid.years()), view.scope().pricePerKwh().orElse(null),
                Numbers.decimal(paid.duty()))).orElse(null);
        return Json.of(new CompareJson(new Head(view.topic().request(), view.topic().currency(), view.proof().status().label(),
                view.topic().machines()), DayJson.of(view.day()),
                new Scope(energy, view.scope().discount().percent().orElse(null), view.scope().byPlatform()),
                view.curves().stream().map(Curve::of).toList(),
                view.together().map(Together::of).orElse(null), builds));
    }
}
