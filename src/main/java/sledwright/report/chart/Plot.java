package sledwright.report.chart;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** A staircase, or points of several, drawn with the characters of a terminal. */
public final class Plot {

    private static final int HEIGHT = 13;
    private static final int COLUMNS_A_TICK = 14;
    private static final int ROWS_A_TICK = 3;

    private final Scale across;
    private final Scale up;
    private final int width;
    private final int margin;
    private final char[][] cells;

    /**
     * @param width columns in all
     */
    public Plot(double leastAcross, double mostAcross, double leastUp, double mostUp, int width) {
        across = Scale.of(leastAcross, mostAcross, width / COLUMNS_A_TICK);
        up = Scale.of(leastUp, mostUp, HEIGHT / ROWS_A_TICK);
        margin = up.values().stream().mapToInt(tick -> up.label(tick, Locale.ROOT).length()).max().orElse(0) + 1;
        this.width = width - margin - 1;
        cells = new char[HEIGHT][this.width];
        for (char[] row : cells) {
            Arrays.fill(row, ' ');
        }
    }

    private int column(double figure) {
        return (int) Math.round(across.share(figure) * (width - 1));
    }

    private int row(double figure) {
        return (int) Math.round((1 - up.share(figure)) * (HEIGHT - 1));
    }

    /** A mark; it covers what lies under it. */
    public void mark(double x, double y, char mark) {
        cells[row(y)][column(x)] = mark;
    }

    /** The line from a point to the next of a staircase: along, then up or down. */
    public void step(double x, double y, double nextX, double nextY) {
        along(x, nextX, y);
        int column = column(nextX);
        for (int row = Math.min(row(y), row(nextY)); row <= Math.max(row(y), row(nextY)); row++) {
            cells[row][column] = '|';
        }
    }

    /** The line from the last point to the edge: more money buys no more. */
    public void toTheEdge(double x, double y) {
        along(x, across.most(), y);
    }

    private void along(double from, double to, double y) {
        for (int column = column(from); column <= column(to); column++) {
            cells[row(y)][column] = '-';
        }
    }

    public List<String> lines() {
        String[] labels = new String[HEIGHT];
        Arrays.fill(labels, "");
        up.values().forEach(tick -> labels[row(tick.doubleValue())] = up.label(tick, Locale.ROOT));
        List<String> lines = new ArrayList<>();
        for (int row = 0; row < HEIGHT; row++) {
            String label = " ".repeat(margin - 1 - labels[row].length()) + labels[row];
            lines.add((label + (labels[row].isEmpty() ? " |" : " +") + new String(cells[row])).stripTrailing());
        }
        lines.add(axis());
        lines.add(ticks());
        return lines;
    }

    private String axis() {
        char[] line = new char[width];
        Arrays.fill(line, '-');
        across.values().forEach(tick -> line[column(tick.doubleValue())] = '+');
        return " ".repeat(margin) + "+" + new String(line);
    }

    /** The labels below their ticks, the last one pushed in from the edge. */
    private String ticks() {
        StringBuilder line = new StringBuilder(" ".repeat(margin + 1 + width));
        for (BigDecimal tick : across.values()) {
            String label = across.label(tick, Locale.ROOT);
            int middle = margin + 1 + column(tick.doubleValue());
            int from = Math.min(Math.max(0, middle - label.length() / 2), line.length() - label.length());
            line.replace(from, from + label.length(), label);
        }
        return line.toString().stripTrailing();
    }
}
