package sledwright.report.chart;

import static sledwright.report.chart.Svg.escaped;
import static sledwright.report.chart.Svg.n;

import java.util.List;

/** Counts by month as columns side by side, of each a part filled. */
public final class MonthColumns {

    private static final int BROAD = 640;
    private static final int NARROW = 320;
    private static final int HEIGHT = 180;
    private static final int TOP = 24;
    private static final int BOTTOM = 150;
    private static final int LABEL_WIDE = 46;

    /**
     * One column.
     *
     * @param label stands below it
     * @param part  at most {@code whole}
     */
    public record Month(String label, int whole, int part) {
    }

    private MonthColumns() {
    }

    /**
     * The same drawing twice, of which a page shows one: of class {@code broad} for a desk, of class {@code narrow} for a phone.
     *
     * @param words all that is to say of it, for whoever does not see it
     */
    public static String of(List<Month> months, String words) {
        return drawn(months, words, BROAD, "broad") + drawn(months, words, NARROW, "narrow");
    }

    private static String drawn(List<Month> months, String words, int width, String className) {
        int most = Math.max(1, months.stream().mapToInt(Month::whole).max().orElse(1));
        int count = Math.max(1, months.size());
        // Labels at both ends are whole, too.
        double edge = Math.max(0, (LABEL_WIDE - width / (double) count) / 2);
        double step = (width - 2 * edge) / count;
        double column = Math.min(56, step * 0.7);
        // Labels that would touch are left out; the words have them all.
        int every = Math.max(1, (int) Math.ceil(LABEL_WIDE / step));
        StringBuilder svg = new StringBuilder(("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"columns %s\" viewBox=\"0 0 %s %s\""
                + " role=\"img\" aria-label=\"%s\" font-size=\"12\">").formatted(className, width, HEIGHT, escaped(words)));
        for (int at = 0; at < months.size(); at++) {
            Month month = months.get(at);
            double middle = edge + step * (at + 0.5);
            bar(svg, "whole", middle, column, month.whole() / (double) most);
            bar(svg, "filled", middle, column, month.part() / (double) most);
            if (month.whole() > 0 && step >= LABEL_WIDE / 2.0) {
                text(svg, middle, BOTTOM - (BOTTOM - TOP) * month.whole() / (double) most - 6,
                        "%s of %s".formatted(month.part(), month.whole()));
            }
            if (at % every == 0) {
                text(svg, middle, BOTTOM + 18, month.label());
            }
        }
        return svg.append("<line class=\"axis\" x1=\"0\" x2=\"%s\" y1=\"%s\" y2=\"%s\"/></svg>\n".formatted(width, BOTTOM, BOTTOM))
                .toString();
    }

    private static void bar(StringBuilder svg, String className, double middle, double wide, double share) {
        double high = (BOTTOM - TOP) * share;
        svg.append("<rect class=\"%s\" x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\"/>".formatted(className, n(middle - wide / 2),
                n(BOTTOM - high), n(wide), n(high)));
    }

    private static void text(StringBuilder svg, double x, double y, String words) {
        svg.append("<text x=\"%s\" y=\"%s\" text-anchor=\"middle\">%s</text>".formatted(n(x), n(y), escaped(words)));
    }
}
