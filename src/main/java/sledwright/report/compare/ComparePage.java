package sledwright.report.compare;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
import sledwright.report.chart.SvgChart;
import sledwright.report.offer.AskedWords;
import sledwright.report.offer.EquipmentWords;
import sledwright.report.page.Markup;
import sledwright.report.page.Letterhead;
import sledwright.report.page.PageHead;
import sledwright.report.page.Pages;
import sledwright.report.page.Wording;
import sledwright.request.Job;
import sledwright.words.Numbers;

/**
 * A comparison as a page: charts and tables of every point. Where scripts run, points answer to pointer and keys, and tables can be
 * sorted and searched; where none does, all is there to read.
 */
public final class ComparePage {

    /** A figure over a cost. */
    public record Section(String id, String title, Markup chart, Plotted plotted, List<Row> rows, List<String> open) {
    }

    /**
     * What a curve is of, in words.
     *
     * @param total whether the cost is the price and the electricity
     * @param saves whether less of the figure is better
     */
    public record Plotted(String cost, boolean total, String figure, String unit, boolean saves) {
    }

    /** A point. */
    public record Row(String link, BuildOnCurve build, Values values, Increment more, String marks, boolean marked) {
    }

    /** The build of a point, in short. */
    public record BuildOnCurve(int number, String platform, String processor, String memory) {
    }

    /** What a point costs and gives. */
    public record Values(Cell cost, Cell price, Cell figure, Cell perUnit) {
    }

    /** What a point costs and gives more than the one before. */
    public record Increment(Cell cost, Cell figure, Cell perUnit) {

        static final Increment NONE = new Increment(Cell.NONE, Cell.NONE, Cell.NONE);
    }

    /** A figure as words, and beside them as a number that sorts. */

    public record Cell(String words, String sorts) {

        static final Cell NONE = new Cell("", "");
    }

    /** A build. */
    public record Machine(int number, String price, Content content, Performance reaches, int days) {
    }

    /**
     * What a machine consists of.
     *
     * @param equipment drives, cards and extras; may be empty
     */
    public record Content(String platform, String processors, String cooling, String supply, String memory, String equipment) {
    }

    /** What a machine does, and the watts that it takes for it. */
    public record Performance(int cores, String bandwidth, String throughput, String load, String wall) {
    }

    private final CompareView view;
    private final Job.Quote job;
    private final Catalog shop;
    private final Wording words;
    private final CompareWords said;

    private ComparePage(CompareView view, Job.Quote job) {
        this.view = view;
        this.job = job;
        shop = job.catalog();
        words = Wording.of(shop);
        said = new CompareWords(view, words);
    }

    /** @param job what was asked */
    public static String of(CompareView view, Job.Quote job) {
        return new ComparePage(view, job).page();
    }

    private String page() {
        PageHead head = PageHead.of(words.say("compare.title", view.topic().request()), words.say("compare.subject"), shop, words);
        List<Machine> machines = new ArrayList<>();
        view.builds().forEach(build -> machines.add(machine(machines.size() + 1, build)));
        return Pages.live("compare", head, Map.ofEntries(Map.entry("say", words.texts()), Map.entry("shop", Letterhead.of(shop)),
                Map.entry("request", view.topic().request()), Map.entry("customer", job.customer()), Map.entry("heading", heading()),
                Map.entry("asked", new AskedWords(words, shop).sentence(job.request())), Map.entry("machines", view.topic().machines()),
                Map.entry("status", said.status()), Map.entry("prices", prices()),
                Map.entry("none", view.proof().status() == Status.IMPOSSIBLE), Map.entry("energy", said.energy()),
                Map.entry("by_platform", view.scope().byPlatform()), Map.entry("sections", sections()),
                Map.entry("chart_style", new Markup(SvgChart.DARK_STYLE)), Map.entry("builds", machines),
                Map.entry("together", together()), Map.entry("notes", said.notes(shop.stationery()).stream().map(note ->
                        Map.of("term", note.term(), "meaning", note.meaning())).toList())));
    }

    private String heading() {
        return job.customer().isEmpty() ? words.say("compare.heading.plain") : words.say("compare.heading", job.customer().get(0));
    }

    /** Of which day, and whether tax is in them. */
    private String prices() {
        String day = words.say("compare.prices", words.day(shop.pricedOn()));
        return shop.stationery().tax().percent().map(percent -> words.say("price.before", day, shop.stationery().tax().name())).orElse(day);
    }

    private Optional<Map<String, Object>> together() {
        return view.together().map(all -> Map.of("sentence", words.say(all.complete() ? "compare.together.all" : "compare.together.some",
                words.figure(Quantity.rounded(100 * all.share()))), "builds", all.builds()));
    }

    private List<Section> sections() {
        CompareCharts charts = new CompareCharts(view, words);
        List<Section> sections = new ArrayList<>();
        for (Cost cost : view.costs()) {
            for (Axis axis : view.axes()) {
                charts.of(axis, cost).ifPresent(chart -> {
                    List<CurveView> curves = view.curves(axis, cost);
                    sections.add(new Section(axis.label() + "-" + cost.label(), said.title(axis, cost),
                            new Markup(SvgChart.ofEachSize(chart, SvgChart.Use.LIVE)),
                            new Plotted(said.cost(cost), cost == Cost.TOTAL, said.figureAndUnit(axis), axis.unit(), axis.lessIsBetter()),
                            curves.stream().flatMap(curve -> curve.points().stream().map(point -> row(curve, point))).toList(),
                            curves.stream().filter(curve -> curve.status() == Status.BEST_FOUND).map(said::open).toList()));
                });
            }
        }
        return sections;
    }

    private Row row(CurveView curve, PointView point) {
        BuildView build = view.build(point.build());
        return new Row(CompareCharts.link(curve, point), new BuildOnCurve(point.build(),
                curve.axes().platform().orElse(build.bare().platform()),
                said.processors(build), said.memory(build)), new Values(money(point.cost()), money(point.paid().price()),
                figure(point.figure()), point.perUnit().map(this::money).orElse(Cell.NONE)), point.extra().map(extra ->
                new Increment(money(extra.cost()), figure(extra.figure()), money(extra.perUnit()))).orElse(Increment.NONE),
                String.join(", ", said.marks(point)), point.marks().knee() || point.marks().bestPerUnit());
    }

    private Cell money(BigDecimal amount) {
        return new Cell(words.money(amount), amount.toPlainString());
    }

    private Cell figure(double figure) {
        return new Cell(words.figure(figure), Numbers.decimal(figure).toPlainString());
    }

    private Machine machine(int number, BuildView build) {
        Figures figures = build.figures();
        Content content = new Content(build.bare().platform(), said.processors(build),
                build.bare().cooling().map(sku -> words.say("compare.cooling", sku)).orElse(""), supply(build), "%s, %s, %s MT/s".formatted(
                said.modules(build), said.memory(build), words.figure(figures.speed().mts())),
                new EquipmentWords(words).joined(build.heaviest().fitout()));
        Performance reaches = new Performance(figures.cores(), words.figure(figures.bandwidthGbs()),
                (figures.throughputEstimated() ? "~" : "") + words.figure(figures.throughput()), words.figure(figures.loadW()),
                figures.wallW().isPresent() ? words.figure(Math.rint(figures.wallW().getAsDouble() * 10) / 10) : "");
        return new Machine(number, build.price().map(words::money).orElse(""), content, reaches, build.leadDays());
    }

    private String supply(BuildView build) {
        return build.bare().supply().map(sku -> "%s \u00d7 %s".formatted(build.bare().supplies(), sku))
                .orElseGet(() -> new EquipmentWords(words).enclosures(build.heaviest().fitout())
                        .map(fed -> words.say("what.power.enclosures", fed)).orElse(words.say("what.power.enclosure")));
    }
}
