package sledwright.report.restock;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.desk.view.RestockView;
import sledwright.report.chart.Chart;
import sledwright.report.chart.SvgChart;
import sledwright.report.page.Markup;
import sledwright.report.page.Letterhead;
import sledwright.report.page.PageHead;
import sledwright.report.page.Pages;
import sledwright.report.page.Wording;
import sledwright.report.restock.RestockTables.Content;
import sledwright.report.restock.RestockTables.Holds;
import sledwright.restock.RestockPlan;
import sledwright.restock.RestockPlan.CurvePoint;

/** A restocking plan as a page: the list, the curve over budgets and what parts are worth. */
public final class RestockPage {

    /** A table; {@code chart} stands before it, where there is one. */
    public record Section(String id, String name, String note, Optional<Markup> chart, List<Head> heads, List<List<Cell>> rows) {
    }

    public record Head(String words, boolean number) {
    }

    public record Cell(String words, String label, boolean number) {
    }

    public record Note(String term, String meaning) {
    }

    private final RestockView view;
    private final RestockPlan plan;
    private final Wording words;

    RestockPage(RestockView view) {
        this.view = view;
        plan = view.plan();
        words = Wording.of(view.shop());
    }

    public static String of(RestockView view) {
        return new RestockPage(view).page();
    }

    private String page() {
        PageHead head = PageHead.of("Stock plan: " + plan.request().name(),
                "What to buy for the orders that are expected, and what that is expected to earn.",
                view.shop());
        return Pages.html("restock.ftlh", head, Map.ofEntries(
                Map.entry("shop", Letterhead.of(view.shop())), Map.entry("day", words.day(view.shop().pricedOn())),
                Map.entry("name", plan.request().name()), Map.entry("months", words.figure(plan.request().horizonMonths())),
                Map.entry("cost", money(plan.cost())),
                Map.entry("budget", plan.request().budget().isPresent() ? money(plan.request().budget().getAsLong()) : "none"),
                Map.entry("with", spread(plan.earned().with())), Map.entry("without", spread(plan.earned().without())),
                Map.entry("gain", spread(plan.earned().gain())), Map.entry("sections", sections()), Map.entry("notes", notes()),
                Map.entry("chart_style", new Markup(SvgChart.DARK_STYLE))));
    }

    String money(double minor) {
        return words.money(view.amount(minor));
    }

    String spread(RestockPlan.Expected expected) {
        return "%s \u00b1 %s".formatted(money(expected.mean()), money(expected.halfWidth()));
    }

    List<Note> notes() {
        return RestockNotes.of(view).entrySet().stream().map(note -> new Note(note.getKey(), note.getValue().in(words.forShop()))).toList();
    }

    /** Its tables with what is drawn of them. */
    List<Section> sections() {
        return RestockTables.of(view).stream().map(this::section).toList();
    }

    private Section section(Content content) {
        List<Head> heads = content.columns().stream().map(column -> new Head(column.header(), column.holds() != Holds.WORDS)).toList();
        List<List<Cell>> rows = new ArrayList<>();
        for (List<Object> row : content.rows()) {
            List<Cell> cells = new ArrayList<>();
            for (int i = 0; i < row.size(); i++) {
                cells.add(new Cell(shown(row.get(i), content.columns().get(i).holds()), heads.get(i).words(), heads.get(i).number()));
            }
            rows.add(cells);
        }
        return new Section(content.id(), content.name(), content.note(), content.id().equals("curve") && !plan.earned().curve().isEmpty()
                ? Optional.of(new Markup(SvgChart.ofEachSize(chart(), SvgChart.Use.PICTURE))) : Optional.empty(), heads, rows);
    }

    private String shown(Object cell, Holds holds) {
        if (cell instanceof BigDecimal number) {
            return holds == Holds.MONEY ? words.money(number) : words.figure(number);
        }
        return cell instanceof Integer number ? words.figure(number) : cell.toString();
    }

    private Chart chart() {
        List<Chart.Spot> spots = plan.earned().curve().stream().map(this::spot).toList();
        List<Chart.Range> ranges = plan.earned().curve().stream().map(CurvePoint::margin).map(margin -> new Chart.Range(
                view.amount(margin.mean() - margin.halfWidth()).doubleValue(),
                view.amount(margin.mean() + margin.halfWidth()).doubleValue())).toList();
        return new Chart("Expected margin by budget",
                ("The margin that is expected with the best plan that was found within each of %s budgets, and its 95 %% interval. The"
                + " table has every point.")
                .formatted(spots.size()), "Budget, " + view.currency(), "Expected margin, " + view.currency(), words.locale(), false,
                List.of(new Chart.Line("margin", spots, ranges)));
    }

    private Chart.Spot spot(CurvePoint point) {
        return Chart.Spot.of(view.amount(point.budget()).doubleValue(), view.amount(point.margin().mean()).doubleValue(),
                "%s to spend: %s".formatted(money(point.budget()), spread(point.margin())));
    }
}
