package sledwright.report.chart;

import static sledwright.report.chart.Svg.n;
import static sledwright.report.chart.Svg.polygon;

import java.util.List;

/**
 * How one of several lines looks. Colours repeat after eight lines, dashes after four and shapes after five, so that no two of forty
 * lines look the same, and without colours no two of twenty.
 *
 * @param light  on a light ground, and {@code dark} on a dark one
 * @param dashes empty: none
 */
record Look(int index, String light, String dark, String dashes) {

    static final int COUNT = 8;

    private static final List<String> LIGHT = List.of("#0f5257", "#b3541e", "#3b5ba5", "#8a2f6b", "#52701b", "#6b4fa0",
            "#8c1d18", "#4a5560");
    private static final List<String> DARK = List.of("#7cc7c9", "#f0a070", "#8fb0f0", "#e08cc8", "#b3d06a", "#c0a8f0",
            "#f2a29b", "#b8c2ca");
    private static final List<String> DASHES = List.of("", "7 3", "2 3", "9 3 2 3");
    private static final int SHAPES = 5;

    static Look of(int line) {
        return new Look(line, LIGHT.get(line % COUNT), DARK.get(line % COUNT), DASHES.get(line % DASHES.size()));
    }

    String className() {
        return "c" + index % COUNT;
    }

    /** The shape of a spot. */
    String shape(double x, double y, double size) {
        return switch (index % SHAPES) {
            case 0 -> "<circle cx=\"%s\" cy=\"%s\" r=\"%s\"/>".formatted(n(x), n(y), n(size));
            case 1 -> polygon(x - size, y - size, x + size, y - size, x + size, y + size, x - size, y + size);
            case 2 -> polygon(x, y - size * 1.3, x + size * 1.2, y + size, x - size * 1.2, y + size);
            case 3 -> polygon(x, y - size * 1.4, x + size * 1.4, y, x, y + size * 1.4, x - size * 1.4, y);
            default -> polygon(x, y + size * 1.3, x + size * 1.2, y - size, x - size * 1.2, y - size);
        };
    }
}
