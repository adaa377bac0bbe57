package sledwright.report.chart;

import static sledwright.report.chart.Svg.n;

/** A bar that stands in a table beside its figure: how much of the largest it is and, filled, a part of that. */
public final class BarStrip {

    private static final double WIDE = 100;

    private BarStrip() {
    }

    /**
     * One {@code svg} of class {@code strip}; whoever hears the table hears the figures.
     *
     * @param whole  of the largest, from 0 to 1
     * @param filled of the largest, too; at most {@code whole}
     */
    public static String of(double whole, double filled) {
        return ("<svg class=\"strip\" viewBox=\"0 0 100 10\" preserveAspectRatio=\"none\" aria-hidden=\"true\" focusable=\"false\">"
                + "<rect class=\"ground\" width=\"100\" height=\"10\"/><rect class=\"whole\" width=\"%s\" height=\"10\"/>"
                + "<rect class=\"filled\" width=\"%s\" height=\"10\"/></svg>").formatted(n(wide(whole)), n(wide(Math.min(whole, filled))));
    }

    private static double wide(double share) {
        return WIDE * Math.max(0, Math.min(1, share));
    }
}
