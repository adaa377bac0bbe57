package sledwright.report.compare;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sledwright.compare.Cost;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.CompareView;
import sledwright.desk.view.CompareView.CurveView;
import sledwright.desk.view.CompareView.PointView;
import sledwright.desk.view.CompareView.Shortened;
import sledwright.desk.view.CompareView.TogetherView;
import sledwright.explain.ask.Unproved;
import sledwright.generator.Axis;
import sledwright.generator.Status;
import sledwright.report.build.BuildText;
import sledwright.report.chart.Plot;
import sledwright.report.text.Ink;
import sledwright.report.text.Page;
import sledwright.report.text.Screen;
import sledwright.report.text.TextTable;
import sledwright.report.text.TextTable.Fit;
import sledwright.words.Numbers;
import sledwright.words.Sentences;

/** A comparison, for people: each figure as a plot and a table of its steps, then the builds behind the numbers. */
public final class CompareText {

    private static final char POINT = 'o';
    private static final char KNEE = 'K';
    private static final char BEST = 'B';
    private static final char BOTH = '*';

    private final CompareView view;
    private final Screen screen;
    private final Page page;
    private final Set<Integer> shown = new TreeSet<>();

    private CompareText(CompareView view, Screen screen) {
        this.view = view;
        this.screen = screen;
        page = new Page(screen);
    }

    public static String of(CompareView view, Screen screen) {
        return new CompareText(view, screen).write();
    }

    private String write() {
        page.text(Ink.HEAD, "%s: what money buys, %s".formatted(view.topic().request(),
                view.topic().machines() == 1 ? "1 machine" : "prices of all %s machines, figures of one".formatted(view.topic()
                .machines())));
        addStatus();
        view.day().warnings().forEach(warning -> page.text(Ink.FAIR, warning));
        view.scope().energy().ifPresent(energy ->
                page.text(("Energy: %s %s at %s %s a kWh, %s %% of the load on average. Total cost is the price and "
                + "the energy.").formatted(Numbers.plain(energy.years()), energy.years() == 1 ? "year" : "years",
                view.scope().pricePerKwh().orElseThrow().stripTrailingZeros().toPlainString(),
                view.topic().currency(), Numbers.plain(100 * energy.duty()))));
        if (view.proof().status() == Status.IMPOSSIBLE) {
            return page.toString();
        }
        view.beforeDiscount().ifPresent(page::text);
        for (Cost cost : view.costs()) {
            for (Axis axis : view.axes()) {
                List<CurveView> curves = view.curves(axis, cost).stream().filter(curve -> !curve.points().isEmpty()).toList();
                if (curves.size() == 1 && !view.scope().byPlatform()) {
                    addCurve(curves.get(0));
                } else if (!curves.isEmpty()) {
                    addPlatforms(curves);
                }
            }
        }
        view.together().ifPresent(this::addTogether);
        addBuilds();
        return page.toString();
    }

    private void addStatus() {
        switch (view.proof().status()) {
            case PROVED -> page.text(Ink.GOOD, "proved: no valid build costs less than a point and gives as much, and no point is missing");
            case BEST_FOUND -> {
                String unproved = "best-found: not every point is proved.";
                page.text(Ink.FAIR, Unproved.sentence(unproved, unproved, view.proof().doubts()));
                view.curves().stream().filter(curve -> curve.status() == Status.BEST_FOUND)
                        .forEach(curve -> page.item("- ", unfinished(curve)));
            }
            case IMPOSSIBLE -> page.text(Ink.BAD,
                    "impossible: no build is valid. What conflicts, and the ways out: sledwright quote");
        }
    }

    private String unfinished(CurveView curve) {
        String name = heading(curve) + curve.axes().platform().map(sku -> " on " + sku).orElse("");
        return "%s: %s proved%s".formatted(name, curve.proved() == 0 ? "no point is" : curve.proved() == 1 ? "the first point is"
                        : "the first %s points are".formatted(curve.proved()),
                curve.bound().map(bound -> "; nothing that gives more costs less than %s %s".formatted(bound, view.topic().currency()))
                .orElse(""));
    }

    private static String heading(CurveView curve) {
        return Sentences.capital(curve.axes().figure().noun()) + " by " + curve.axes().cost().noun();
    }

    private void addCurve(CurveView curve) {
        page.heading("%s (%s by %s)".formatted(heading(curve), curve.axes().figure().unit().isEmpty() ? "figure"
                : curve.axes().figure().unit(), view.topic().currency()));
        Plot plot = plot(List.of(curve));
        List<PointView> points = curve.points();
        for (int i = 1; i < points.size(); i++) {
            plot.step(x(points.get(i - 1)), points.get(i - 1).figure(), x(points.get(i)), points.get(i).figure());
        }
        PointView last = points.get(points.size() - 1);
        plot.toTheEdge(x(last), last.figure());
        points.forEach(point -> plot.mark(x(point), point.figure(), POINT));
        points.stream().filter(point -> point.marks().knee() || point.marks().bestPerUnit())
                .forEach(point -> plot.mark(x(point), point.figure(),
                point.marks().knee() && point.marks().bestPerUnit() ? BOTH : point.marks().knee() ? KNEE : BEST));
        plot.lines().forEach(page::line);
        addRest(curve);
        page.table(steps(curve));
    }

    private static double x(PointView point) {
        return point.cost().doubleValue();
    }

    private Plot plot(List<CurveView> curves) {
        List<PointView> all = curves.stream().flatMap(curve -> curve.points().stream()).toList();
        return new Plot(all.stream().mapToDouble(CompareText::x).min().orElse(0), all.stream().mapToDouble(CompareText::x).max().orElse(0),
                all.stream().mapToDouble(PointView::figure).min().orElse(0), all.stream().mapToDouble(PointView::figure).max().orElse(0),
                screen.width());
    }

    /** The marks of the plot, and what the table leaves out. */
    private void addRest(CurveView curve) {
        Shortened rows = curve.shortened();
        page.text("%s a point, %s the knee, %s the best price of a unit, %s both.".formatted(POINT, KNEE, BEST, BOTH)
                + (rows.left() == 0 ? ""
                : " %s of %s points are left out below: those that are less than %s %% better than the one before.".formatted(rows.left(),
                        curve.points().size(), Numbers.plain(100 * rows.share()))));
    }

    private TextTable steps(CurveView curve) {
        boolean less = curve.axes().figure().lessIsBetter();
        TextTable table = new TextTable().column(view.topic().currency(), Fit.RIGHT).column(unit(curve.axes().figure()), Fit.RIGHT)
                .column(less ? "each saved" : "each", Fit.RIGHT).column("extra", Fit.RIGHT).column(less ? "saves" : "buys", Fit.RIGHT)
                .column("each extra", Fit.RIGHT).column("", Fit.LEFT).column("build", Fit.RIGHT).column("processor", Fit.FLEXIBLE);
        for (PointView point : curve.shortened().points()) {
            shown.add(point.build());
            BuildView build = view.build(point.build());
            table.row(point.cost(), Numbers.plain(point.figure()), point.perUnit().map(this::cents).orElse(""),
                    point.extra().map(extra -> extra.cost().toString()).orElse(""), point.extra()
                    .map(extra -> Numbers.plain(extra.figure()).toString()).orElse(""), point.extra().map(extra -> cents(extra.perUnit()))
                    .orElse(""), marks(point), "#" + point.build(), BuildText.processors(build));
        }
        return table;
    }

    private static String unit(Axis axis) {
        return axis.unit().isEmpty() ? axis.noun() : axis.unit();
    }

    private String cents(BigDecimal amount) {
        return amount.setScale(Math.max(0, amount.scale() - 2), RoundingMode.HALF_UP).toString();
    }

    private static String marks(PointView point) {
        return Stream.of(point.marks().knee() ? "K" : "", point.marks().bestPerUnit() ? "B" : "", point.marks().proved() ? "" : "?")
                .collect(Collectors.joining());
    }

    private void addPlatforms(List<CurveView> curves) {
        CurveView first = curves.get(0);
        page.heading("%s (%s by %s), platform by platform"
                .formatted(heading(first), first.axes().figure().unit().isEmpty() ? "figure" : first.axes().figure().unit(),
                view.topic().currency()));
        Map<CurveView, Character> letters = new LinkedHashMap<>();
        curves.forEach(curve -> letters.put(curve, (char) ('a' + letters.size() % 26)));
        Plot plot = plot(curves);
        letters.forEach((curve, letter) -> curve.points().stream().filter(point -> !point.marks().foremost())
                .forEach(point -> plot.mark(x(point), point.figure(), letter)));
        letters.forEach((curve, letter) -> curve.points().stream().filter(point -> point.marks().foremost())
                .forEach(point -> plot.mark(x(point), point.figure(), Character.toUpperCase(letter))));
        plot.lines().forEach(page::line);
        String gives = first.axes().figure().lessIsBetter() ? "takes" : "gives";
        TextTable table = new TextTable().column("", Fit.LEFT).column("platform", Fit.LEFT).column("points", Fit.RIGHT)
                .column("ahead", Fit.RIGHT)
                .column(view.topic().currency(), Fit.RIGHT).column(gives, Fit.RIGHT).column("to " + view.topic().currency(), Fit.RIGHT)
                .column(gives, Fit.RIGHT).column("best each", Fit.RIGHT);
        letters.forEach((curve, letter) -> {
            PointView from = curve.points().get(0);
            PointView to = curve.points().get(curve.points().size() - 1);
            table.row(letter, curve.axes().platform().orElse(""), curve.points().size(),
                    curve.points().stream().filter(point -> point.marks().foremost()).count(), from.cost(),
                    Numbers.plain(from.figure()), to.cost(), Numbers.plain(to.figure()),
                    curve.points().stream().filter(point -> point.marks().bestPerUnit()).findFirst().flatMap(PointView::perUnit)
                    .map(this::cents)
                    .orElse(""));
        });
        page.gap().table(table);
        page.gap().text("Capital letters are ahead: no platform gives as much for less.");
        List<String> none = view.curves(first.axes().figure(), first.axes().cost()).stream()
                .filter(curve -> curve.status() == Status.IMPOSSIBLE)
                .flatMap(curve -> curve.axes().platform().stream()).toList();
        if (!none.isEmpty()) {
            page.text("No build is valid on %s.".formatted(String.join(", ", none)));
        }
    }

    private void addTogether(TogetherView all) {
        page.heading("All figures together");
        String reach = all.complete() ? "" : all.full() ? " below the price of the last: no more than these are looked for"
                : view.proof().doubts().late() ? " so far as the time limit let the search come" : " so far as the search came";
        String share = Numbers.plain(100 * all.share()).toString();
        page.text(all.builds().size() == 1 ? "No dearer build beats this one by %s %% in any figure%s.".formatted(share, reach)
                : "Each of these %s builds beats every cheaper one of them by %s %% in some figure, and none that does so is missing%s."
                .formatted(all.builds().size(), share, reach));
        shown.addAll(all.builds());
    }

    /** The builds that the tables name. */
    private void addBuilds() {
        if (shown.isEmpty()) {
            return;
        }
        page.heading("The builds");
        boolean energy = view.scope().energy().isPresent();
        TextTable table = new TextTable().column("build", Fit.RIGHT).column(view.topic().currency(), Fit.RIGHT).column("platform", Fit.LEFT)
                .column("processor", Fit.LEFT)
                .column("memory", Fit.FLEXIBLE).column("GB/s", Fit.RIGHT).column("load W", Fit.RIGHT).column("days", Fit.RIGHT);
        for (int number : shown) {
            BuildView build = view.build(number);
            table.row("#" + number, BuildText.money(build), build.bare().platform(), BuildText.processors(build), BuildText.memory(build),
                    Numbers.plain(build.figures().bandwidthGbs()), Numbers.plain(build.figures().loadW()),
                    build.leadDays());
        }
        page.table(table);
    }
}
