package sledwright.report.compare;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sledwright.compare.Cost;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.CompareView;
import sledwright.desk.view.CompareView.CurveView;
import sledwright.desk.view.CompareView.PointView;
import sledwright.domain.Catalog;
import sledwright.generator.Axis;
import sledwright.generator.Status;
import sledwright.metrics.Figures;
import sledwright.metrics.Quantity;
import sledwright.report.build.BuildText;
import sledwright.report.build.FitoutCells;
import sledwright.report.chart.SvgChart;
import sledwright.report.page.Markup;
import sledwright.report.page.Letterhead;
import sledwright.report.page.PageHead;
import sledwright.report.page.Pages;
import sledwright.report.page.Wording;
import sledwright.words.Numbers;
import sledwright.words.Sentences;

/**
 * A comparison as a page: charts and tables of every point. Where scripts run, points answer to pointer and keys, and tables can be
 * sorted and searched; where none does, all is there to read.
 */
public final class ComparePage {

    /** A figure over a cost. */
    public record Section(String id, String title, Markup chart, boolean saves, boolean total, String cost, String figure, String unit,
            List<Row> rows, List<String> open) {
    }

    /** A point; figures stand as words, and beside them as numbers that sort. */
    public record Row(String link, String platform, Cell cost, Cell price, Cell figure, Cell perUnit, Cell extraCost, Cell extra,
            Cell perExtra, String marks, int build, String processor, String memory, boolean marked) {
    }

    public record Cell(String words, String sorts) {

        static final Cell NONE = new Cell("", "");
    }

    /**
     * A build.
     *
     * @param equipment drives, cards and extras; may be empty
     */
    public record Machine(int number, String price, String platform, String processors, String cooling, String supply, String memory,
            String equipment, int cores, String bandwidth, String throughput, String load, String wall, int days) {
    }

    private final CompareView view;
    private final Catalog shop;
    private final Wording words;

    private ComparePage(CompareView view, Catalog shop) {
        this.view = view;
        this.shop = shop;
        words = Wording.of(shop);
    }

    public static String of(CompareView view, Catalog shop) {
        return new ComparePage(view, shop).page();
    }

    private String page() {
        PageHead head = PageHead.of("Comparison: " + view.request(),
                "What more money buys, figure by figure, with every point proved or said not to be.",
                shop);
        List<Machine> machines = new ArrayList<>();
        view.builds().forEach(build -> machines.add(machine(machines.size() + 1, build)));
        return Pages.live("compare", head,
                Map.ofEntries(Map.entry("shop", Letterhead.of(shop)), Map.entry("request", view.request()),
                        Map.entry("machines", view.machines()), Map.entry("status", status()), Map.entry("prices", prices()),
                        Map.entry("none", view.status() == Status.IMPOSSIBLE),
                        Map.entry("energy", energy()), Map.entry("by_platform", view.byPlatform()),
                Map.entry("sections", sections()), Map.entry("chart_style", new Markup(SvgChart.DARK_STYLE)), Map.entry("builds", machines),
                Map.entry("together", together()),
                Map.entry("notes", CompareNotes.of(view, shop.stationery()).stream().map(note ->
                        Map.of("term", note.term(), "meaning", note.meaning())).toList())));
    }

    private String status() {
        return switch (view.status()) {
            case PROVED -> "Proved: no valid build costs less than a point and gives as much, and no point is missing.";
            case BEST_FOUND -> "Best found: not every point is proved.";
            case IMPOSSIBLE -> "Impossible: no build is valid.";
        };
    }

    /** Of which day, and whether tax is in them. */
    private String prices() {
        return "of " + words.day(shop.pricedOn()) + shop.stationery().taxPercent().map(percent -> ", before %s of %s %%".formatted(
                shop.stationery().taxName(), words.figure(percent))).orElse("");
    }

    private Optional<String> energy() {
        return view.energy().map(energy -> "%s years, %s a kWh, %s %% of the load on average".formatted(words.figure(energy.years()),
                words.measure(view.pricePerKwh().orElseThrow().stripTrailingZeros()) + " "
                + view.currency(), words.figure(Quantity.rounded(100 * energy.duty()))));
    }

    private Optional<Map<String, Object>> together() {
        return view.together()
                .map(all -> Map.of("share", words.figure(Quantity.rounded(100 * all.share())), "complete", all.complete(), "builds",
                all.builds()));
    }

    private List<Section> sections() {
        CompareCharts charts = new CompareCharts(view, words);
        List<Section> sections = new ArrayList<>();
        for (Cost cost : view.costs()) {
            for (Axis axis : view.axes()) {
                charts.of(axis, cost).ifPresent(chart -> {
                    List<CurveView> curves = view.curves(axis, cost);
                    sections.add(new Section(axis.label() + "-" + cost.label(), CompareCharts.title(axis, cost),
                            new Markup(SvgChart.ofEachSize(chart, SvgChart.Use.LIVE)), axis.lessIsBetter(), cost == Cost.TOTAL,
                            Sentences.capital(cost.noun()), Sentences.capital(curves.get(0).figureWords()),
                            axis.unit(),
                            curves.stream().flatMap(curve -> curve.points().stream().map(point -> row(curve, point))).toList(),
                            curves.stream().filter(curve -> curve.status() == Status.BEST_FOUND).map(this::open).toList()));
                });
            }
        }
        return sections;
    }

    private String open(CurveView curve) {
        String proved = curve.proved() == 0 ? "No point is proved" : curve.proved() == 1 ? "The first point is proved"
                : "The first %s of %s points are proved".formatted(curve.proved(), curve.points().size());
        return "%s%s%s.".formatted(curve.platform().map(sku -> sku + ": ").orElse(""), proved,
                curve.bound().map(bound -> "; nothing that gives more costs less than " + words.money(bound)).orElse(""));
    }

    private Row row(CurveView curve, PointView point) {
        BuildView build = view.build(point.build());
        String marks = Stream.of(point.knee() ? "knee" : "", point.bestPerUnit() ? "best per unit" : "", view.byPlatform()
                && point.foremost() ? "ahead" : "", point.proved() ? ""
                : "not proved").filter(mark -> !mark.isEmpty()).collect(Collectors.joining(", "));
        return new Row(CompareCharts.link(curve, point), curve.platform().orElse(build.platform()),
                money(point.cost()), money(point.price()), figure(point.figure()),
                point.perUnit().map(this::money).orElse(Cell.NONE),
                point.extra().map(extra -> money(extra.cost())).orElse(Cell.NONE),
                point.extra().map(extra -> figure(extra.figure())).orElse(Cell.NONE),
                point.extra().map(extra -> money(extra.perUnit())).orElse(Cell.NONE),
                marks, point.build(), BuildText.processors(build), BuildText.memory(build), point.knee() || point.bestPerUnit());
    }

    private Cell money(BigDecimal amount) {
        return new Cell(words.money(amount), amount.toPlainString());
    }

    private Cell figure(double figure) {
        return new Cell(words.figure(figure), Numbers.decimal(figure).toPlainString());
    }

    private Machine machine(int number, BuildView build) {
        Figures figures = build.figures();
        return new Machine(number, build.price().map(words::money).orElse(""), build.platform(), BuildText.processors(build),
                build.cooling().orElse("none"), supply(build), "%s, %s at %s MT/s".formatted(BuildText.modules(build.heaviest().modules()),
                BuildText.memory(build), words.figure(figures.speed().mts())), FitoutCells.joined(build.heaviest().fitout()),
                figures.cores(), words.figure(figures.bandwidthGbs()),
                (figures.throughputEstimated() ? "~" : "") + words.figure(figures.throughput()), words.figure(figures.loadW()),
                figures.wallW().isPresent() ? words.figure(Math.rint(figures.wallW().getAsDouble() * 10) / 10) : "", build.leadDays());
    }

    private static String supply(BuildView build) {
        String enclosures = FitoutCells.enclosures(build.heaviest().fitout());
        return build.supply().map(sku -> "supply %s x %s".formatted(build.supplies(), sku))
                .orElse(enclosures.isEmpty() ? "fed by its enclosure" : "in " + enclosures);
    }
}
