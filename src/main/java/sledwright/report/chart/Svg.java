package sledwright.report.chart;

import java.util.Locale;
import sledwright.report.chart.Chart.Mark;

/** Pieces that drawings are written with. */
final class Svg {

    private Svg() {
    }

    /** The shape that makes a spot stand out. */
    static String mark(Mark mark, double x, double y) {
        double size = 8;
        return switch (mark) {
            case DIAMOND -> polygon(x, y - size, x + size, y, x, y + size, x - size, y);
            case TRIANGLE -> polygon(x, y - size, x + size, y + size * 0.75, x - size, y + size * 0.75);
            case STAR -> {
                double[] points = new double[20];
                for (int i = 0; i < 10; i++) {
                    double radius = i % 2 == 0 ? size * 1.2 : size * 0.5;
                    points[2 * i] = x + radius * Math.sin(Math.PI * i / 5);
                    points[2 * i + 1] = y - radius * Math.cos(Math.PI * i / 5);
                }
                yield polygon(points);
            }
            case NONE -> "";
        };
    }

    static String polygon(double... coordinates) {
        StringBuilder points = new StringBuilder();
        for (int i = 0; i < coordinates.length; i += 2) {
            points.append(i == 0 ? "" : " ").append(n(coordinates[i])).append(',').append(n(coordinates[i + 1]));
        }
        return "<polygon points=\"" + points + "\"/>";
    }

    /** To a tenth of a unit of the drawing. */
    static String n(double figure) {
        String written = String.format(Locale.ROOT, "%.1f", figure);
        return written.endsWith(".0") ? written.substring(0, written.length() - 2) : written;
    }

    static String escaped(String text) {
        StringBuilder safe = new StringBuilder();
        text.codePoints().forEach(character -> {
            switch (character) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                default -> safe.appendCodePoint(isDrawn(character) ? character : '\uFFFD');
            }
        });
        return safe.toString();
    }

    /** What XML can hold and what turns nothing round. */
    private static boolean isDrawn(int character) {
        return !Character.isISOControl(character) && Character.getType(character) != Character.SURROGATE
                && Character.getType(character) != Character.FORMAT
                && (character & 0xFFFE) != 0xFFFE;
    }
}
