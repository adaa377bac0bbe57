package sledwright.report.chart;

import static sledwright.report.chart.Svg.escaped;
import static sledwright.report.chart.Svg.n;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import sledwright.report.chart.Chart.Line;
import sledwright.report.chart.Chart.Mark;
import sledwright.report.chart.Chart.Range;
import sledwright.report.chart.Chart.Spot;

/**
 * A chart as SVG. Lines differ by dashes and by the shape of their spots, and what stands out by its shape and words, so that a copy
 * in black and white loses nothing. Colours are attributes, which a style sheet may override by class: {@link #DARK_STYLE} does.
 */
public final class SvgChart {

    /** What the drawing is for. */
    public enum Use {
        /** One of the pictures of a file, under its title. */
        FILE,
        /** One picture on a page, which has a heading for it. */
        PICTURE,
        /** On a page that makes each spot answer to pointer and keys. */
        LIVE
    }

    /** How wide a drawing is: its letters keep their size. */
    private enum Size {
        BROAD(760, 400, 26, 6, 5),
        /** For phones: the legend stands below, and spots are called by their shape alone. */
        NARROW(340, 250, 16, 4, 4);

        private final int width;
        private final int height;
        private final int right;
        private final int stepsAcross;
        private final int stepsUp;

        Size(int width, int height, int right, int stepsAcross, int stepsUp) {
            this.width = width;
            this.height = height;
            this.right = right;
            this.stepsAcross = stepsAcross;
            this.stepsUp = stepsUp;
        }

        String className() {
            return this == BROAD ? "broad" : "narrow";
        }
    }

    /** Colours on dark ground, for whatever style sheet knows that the ground is dark. */
    public static final String DARK_STYLE = darkStyle();

    private static final String FONT = "Noto Sans, Segoe UI, Liberation Sans, Arial, sans-serif";
    private static final int BOTTOM = 54;
    private static final int LEGEND_ROW = 21;
    private static final int LEGEND_MARGIN = 22;
    private static final double DIGIT = 7.0;
    private static final double LETTER = 6.6;
    private static final int CALL_HEIGHT = 16;
    private static final int CALL_GAP = 12;

    private final Chart chart;
    private final Use use;
    private final Size size;
    private final StringBuilder svg = new StringBuilder();
    private final Scale across;
    private final Scale up;
    private final double left;
    private final double top;
    private final double right;
    private final double bottom;
    private final double height;

    private SvgChart(Chart chart, Use use, Size size) {
        this.chart = chart;
        this.use = use;
        this.size = size;
        List<Spot> spots = chart.lines().stream().flatMap(line -> line.spots().stream()).toList();
        across = Scale.of(min(spots.stream().map(Spot::across)), max(spots.stream().map(Spot::across)), size.stepsAcross);
        up = Scale.of(min(heights()), max(heights()), size.stepsUp);
        int digits = up.values().stream().mapToInt(tick -> up.label(tick, chart.locale()).length()).max().orElse(1);
        left = 18 + digits * DIGIT;
        top = use == Use.FILE ? 66 : 36;
        if (size == Size.NARROW) {
            bottom = size.height - BOTTOM;
            height = size.height + (several() ? (chart.lines().size() + legendColumns() - 1) / legendColumns() * LEGEND_ROW : 0);
            right = size.width - size.right;
        } else {
            height = Math.max(size.height + (use == Use.FILE ? 30 : 0), top + chart.lines().size() * LEGEND_ROW + BOTTOM);
            bottom = height - BOTTOM;
            right = size.width - size.right - (several() ? legendWidth() : 0);
        }
    }

    private Stream<Double> heights() {
        return chart.lines().stream().flatMap(line -> Stream.concat(line.spots().stream().map(Spot::up),
                line.ranges().stream().flatMap(range -> Stream.of(range.least(), range.most()))));
    }

    private static double min(Stream<Double> figures) {
        return figures.min(Comparator.naturalOrder()).orElse(0.0);
    }

    private static double max(Stream<Double> figures) {
        return figures.max(Comparator.naturalOrder()).orElse(0.0);
    }

    /** The drawing for a page: one {@code svg} element of class {@code broad}. */
    public static String of(Chart chart, Use use) {
        return new SvgChart(chart, use, Size.BROAD).draw(0);
    }

    /** The drawing for a page, and behind it the same for a phone, of class {@code narrow}: the page shows one of the two. */
    public static String ofEachSize(Chart chart, Use use) {
        return of(chart, use) + new SvgChart(chart, use, Size.NARROW).draw(0);
    }

    /** A file with one chart below the other, which on dark screens has its own colours. */
    public static String file(String title, List<Chart> charts) {
        List<SvgChart> drawings = charts.stream().map(chart -> new SvgChart(chart, Use.FILE, Size.BROAD)).toList();
        double height = drawings.stream().mapToDouble(drawing -> drawing.height).sum();
        StringBuilder file = new StringBuilder("""
                <?xml version="1.0" encoding="UTF-8"?>
                <svg xmlns="http://www.w3.org/2000/svg" class="chart" width="%s" height="%s" viewBox="0 0 %s %s" role="img" aria-label="%s">
                <title>%s</title>
                <style>@media screen and (prefers-color-scheme: dark) {
                %s}</style>
                <rect class="ground" width="%s" height="%s" fill="#ffffff"/>
                """.formatted(Size.BROAD.width, n(height), Size.BROAD.width, n(height), escaped(title), escaped(title), DARK_STYLE,
                Size.BROAD.width, n(height)));
        double from = 0;
        for (SvgChart drawing : drawings) {
            file.append(drawing.draw(from));
            from += drawing.height;
        }
        return file.append("</svg>\n").toString();
    }

    private boolean several() {
        return chart.lines().size() > 1;
    }

    private double legendWidth() {
        return LEGEND_MARGIN + 44 + LETTER * 1.12 * chart.lines().stream().mapToInt(line -> line.name().length()).max().orElse(0);
    }

    /** How many names stand side by side below a narrow drawing. */
    private int legendColumns() {
        return Math.max(1, (int) (size.width / legendWidth()));
    }

    /** @param from where the drawing begins in its file */
    private String draw(double from) {
        String label = escaped(chart.title() + ". " + chart.description());
        add("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %s %s\" role=\"%s\" aria-label=\"%s\" class=\"chart %s\""
                + " font-family=\"%s\" font-size=\"12\"%s>",
                size.width, n(height), use == Use.LIVE ? "group" : "img", label, size.className(), FONT,
                use == Use.FILE ? " y=\"%s\" width=\"%s\" height=\"%s\"".formatted(n(from), size.width, n(height)) : "");
        if (use == Use.FILE) {
            add("<desc>%s</desc>", escaped(chart.description()));
            text(8, 26, "start", "ink", "#1b1f23", 15, true, chart.title());
        }
        axes();
        for (int i = 0; i < chart.lines().size(); i++) {
            line(i);
        }
        for (int i = 0; i < chart.lines().size(); i++) {
            spots(i);
        }
        if (size == Size.BROAD) {
            calls();
        }
        if (several()) {
            legend();
        }
        svg.append("</svg>\n");
        return svg.toString();
    }

    private void axes() {
        add("<g aria-hidden=\"true\">");
        for (BigDecimal tick : up.values()) {
            double y = y(tick.doubleValue());
            add("<line class=\"grid\" x1=\"%s\" x2=\"%s\" y1=\"%s\" y2=\"%s\" stroke=\"#dfe4e8\"/>", n(left), n(right), n(y), n(y));
            text(left - 8, y + 4, "end", "soft", "#55606b", 12, false, up.label(tick, chart.locale()));
        }
        for (BigDecimal tick : across.values()) {
            double x = x(tick.doubleValue());
            add("<line class=\"axis\" x1=\"%s\" x2=\"%s\" y1=\"%s\" y2=\"%s\" stroke=\"#55606b\"/>", n(x), n(x), n(bottom), n(bottom + 5));
            text(x, bottom + 20, "middle", "soft", "#55606b", 12, false, across.label(tick, chart.locale()));
        }
        add("<line class=\"axis\" x1=\"%s\" x2=\"%s\" y1=\"%s\" y2=\"%s\" stroke=\"#55606b\"/>", n(left), n(right), n(bottom), n(bottom));
        text(8, top - 16, "start", "ink", "#1b1f23", 12, true, chart.up());
        text(right, bottom + 42, "end", "ink", "#1b1f23", 12, true, chart.across());
        add("</g>");
    }

    private void line(int line) {
        List<Spot> spots = chart.lines().get(line).spots();
        List<Range> ranges = chart.lines().get(line).ranges();
        Look look = Look.of(line);
        if (spots.isEmpty()) {
            return;
        }
        if (!ranges.isEmpty()) {
            band(spots, ranges, look);
        }
        StringBuilder path = new StringBuilder("M%s %s".formatted(n(x(spots.get(0).across())), n(y(spots.get(0).up()))));
        for (Spot spot : spots.subList(1, spots.size())) {
            path.append((ranges.isEmpty() ? "H%s V%s" : "L%s %s").formatted(n(x(spot.across())), n(y(spot.up()))));
        }
        if (!several() && ranges.isEmpty()) {
            // More money than the last point's buys no more.
            path.append("H").append(n(right));
        }
        add("<path class=\"line %s\" d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"%s\"%s/>", look.className(), path, look.light(),
                several() ? "1.6" : "2", look.dashes().isEmpty() ? "" : " stroke-dasharray=\"" + look.dashes() + "\"");
    }

    /** The ranges of spots: shaded from one to the next, and a bar at each. */
    private void band(List<Spot> spots, List<Range> ranges, Look look) {
        StringBuilder edge = new StringBuilder();
        StringBuilder bars = new StringBuilder();
        for (int i = 0; i < spots.size(); i++) {
            String x = n(x(spots.get(i).across()));
            edge.append(i == 0 ? "M" : "L").append(x).append(' ').append(n(y(ranges.get(i).most())));
            bars.append("M%s %sV%s".formatted(x, n(y(ranges.get(i).least())), n(y(ranges.get(i).most()))));
        }
        for (int i = spots.size() - 1; i >= 0; i--) {
            edge.append("L%s %s".formatted(n(x(spots.get(i).across())), n(y(ranges.get(i).least()))));
        }
        add("<path aria-hidden=\"true\" class=\"band %s\" d=\"%sZ\" fill=\"%s\" fill-opacity=\"0.18\"/>", look.className(), edge,
                look.light());
        add("<path aria-hidden=\"true\" class=\"line %s\" d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"1\"/>", look.className(),
                bars, look.light());
    }

    private void spots(int line) {
        Look look = Look.of(line);
        Line drawn = chart.lines().get(line);
        for (Spot spot : drawn.spots()) {
            String shape = spot.mark() == Mark.NONE ? look.shape(x(spot.across()), y(spot.up()), several() ? 3.6 : 3.2)
                    : Svg.mark(spot.mark(), x(spot.across()), y(spot.up()));
            String fill = spot.ahead() ? look.light() : "#ffffff";
            String words = (several() ? drawn.name() + ": " : "") + spot.words();
            add("<g class=\"spot %s%s\"%s%s fill=\"%s\" stroke=\"%s\" stroke-width=\"1.4\">", look.className(), spot.ahead() ? ""
                    : " hollow", spot.link().map(id -> " data-link=\"" + escaped(id) + "\"").orElse(""),
                    use == Use.LIVE ? " role=\"img\" aria-label=\"" + escaped(words) + "\"" : "", fill, look.light());
            add("<title>%s</title>", escaped(words));
            if (use == Use.LIVE) {
                add("<circle class=\"hit\" cx=\"%s\" cy=\"%s\" r=\"9\" fill=\"none\" stroke=\"none\" pointer-events=\"all\"/>",
                        n(x(spot.across())), n(y(spot.up())));
            }
            add("%s</g>", shape);
        }
    }

    /** Where words stand: from left to right, and how high. */
    private record Place(double from, double to, double at) {

        boolean touches(Place other) {
            return from < other.to && to > other.from && Math.abs(at - other.at) < CALL_HEIGHT;
        }
    }

    /** The words beside spots, on the side that the staircase leaves free, none on top of another. */
    private void calls() {
        List<Spot> called = chart.lines().stream().flatMap(line -> line.spots().stream()).filter(spot -> spot.call().isPresent())
                .sorted(Comparator.comparingDouble(Spot::across)).toList();
        List<Place> taken = new ArrayList<>();
        for (Spot spot : called) {
            String words = spot.call().orElseThrow();
            double wide = words.length() * LETTER;
            double beside = x(spot.across()) + CALL_GAP;
            boolean before = beside + wide > right;
            double from = before ? x(spot.across()) - CALL_GAP - wide : beside;
            Place place = free(new Place(from, from + wide, height(spot, 1)), spot, taken);
            taken.add(place);
            if (place.from > from) {
                add("<path aria-hidden=\"true\" class=\"axis\" d=\"M%s %sL%s %s\" stroke=\"#55606b\" fill=\"none\"/>",
                        n(x(spot.across()) + 6), n(y(spot.up()) + (chart.falling() ? -4 : 4)), n(place.from - 3), n(place.at - 4));
            }
            // A rim of the ground's colour keeps words readable where they cross a line.
            add("<text aria-hidden=\"true\" class=\"call ink\" x=\"%s\" y=\"%s\" text-anchor=\"%s\" fill=\"#1b1f23\" stroke=\"#ffffff\""
                    + " stroke-width=\"3.5\" stroke-linejoin=\"round\" paint-order=\"stroke\">%s</text>",
                    n(before ? place.to : place.from), n(place.at), before ? "end" : "start", escaped(words));
        }
    }

    /** A number of rows away from a spot, on the side that the staircase leaves free, and within the axes. */
    private double height(Spot spot, int rows) {
        double at = chart.falling() ? y(spot.up()) - 10 - CALL_HEIGHT * (rows - 1) : y(spot.up()) + 4 + CALL_HEIGHT * rows;
        return Math.max(top + 4, Math.min(bottom - 6, at));
    }

    /** The first that is free of a row or two further away, and of the same row behind what stands there. */
    private Place free(Place wanted, Spot spot, List<Place> taken) {
        for (int rows = 1; rows <= 3; rows++) {
            Place place = new Place(wanted.from, wanted.to, height(spot, rows));
            if (taken.stream().noneMatch(place::touches)) {
                return place;
            }
        }
        double behind = taken.stream().filter(wanted::touches).mapToDouble(Place::to).max().orElse(wanted.from) + CALL_GAP;
        return behind + wanted.to - wanted.from > right ? wanted : new Place(behind, behind + wanted.to - wanted.from, wanted.at);
    }

    private void legend() {
        boolean below = size == Size.NARROW;
        add("<g aria-hidden=\"true\">");
        for (int i = 0; i < chart.lines().size(); i++) {
            Look look = Look.of(i);
            int row = below ? i / legendColumns() : i;
            double x = below ? 8 + i % legendColumns() * (double) size.width / legendColumns() : right + LEGEND_MARGIN;
            double y = (below ? size.height + 4 : top + 6) + row * LEGEND_ROW;
            add("<line class=\"line %s\" x1=\"%s\" x2=\"%s\" y1=\"%s\" y2=\"%s\" stroke=\"%s\" stroke-width=\"1.6\"%s/>", look.className(),
                    n(x), n(x + 34), n(y), n(y), look.light(), look.dashes().isEmpty() ? ""
                    : " stroke-dasharray=\"" + look.dashes() + "\"");
            add("<g class=\"spot %s\" fill=\"%s\" stroke=\"%s\">%s</g>", look.className(), look.light(), look.light(),
                    look.shape(x + 17, y, 3.6));
            text(x + 42, y + 4, "start", "ink", "#1b1f23", 12, false, chart.lines().get(i).name());
        }
        add("</g>");
    }

    private double x(double figure) {
        return left + across.share(figure) * (right - left);
    }

    private double y(double figure) {
        return bottom - up.share(figure) * (bottom - top);
    }

    private void text(double x, double y, String anchor, String className, String colour, int size, boolean bold, String words) {
        add("<text class=\"%s\" x=\"%s\" y=\"%s\" text-anchor=\"%s\" fill=\"%s\" font-size=\"%s\"%s>%s</text>", className, n(x), n(y),
                anchor, colour, size, bold ? " font-weight=\"700\"" : "", escaped(words));
    }

    private void add(String format, Object... values) {
        svg.append(format.formatted(values)).append('\n');
    }

    private static String darkStyle() {
        StringBuilder style = new StringBuilder("""
                .chart .ground { fill: #171b1e; }
                .chart .ink { fill: #e6eaec; }
                .chart .soft { fill: #a7b1b8; }
                .chart .grid { stroke: #333c42; }
                .chart .axis { stroke: #a7b1b8; }
                .chart .call { stroke: #171b1e; }
                """);
        for (int i = 0; i < Look.COUNT; i++) {
            Look look = Look.of(i);
            style.append(".chart .line.%s { stroke: %s; }\n.chart .spot.%s { stroke: %s; fill: %s; }\n.chart .band.%s { fill: %s; }\n"
                    .formatted(look.className(), look.dark(), look.className(), look.dark(), look.dark(), look.className(),
                    look.dark()));
        }
        return style.append(".chart .spot.hollow { fill: #171b1e; }\n").toString();
    }
}
