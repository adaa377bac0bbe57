package sledwright.report.text;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Rows of text in aligned columns. A table that is too wide folds its widest flexible columns over several lines. */
public final class TextTable {

    private static final String GAP = "  ";
    private static final int LEAST_FLEXIBLE_WIDTH = 8;

    /** How a column stands. */
    public enum Fit {
        LEFT, RIGHT, FLEXIBLE
    }

    private final List<String> headers = new ArrayList<>();
    private final List<Fit> fits = new ArrayList<>();
    private final List<List<String>> rows = new ArrayList<>();

    public TextTable column(String header, Fit fit) {
        headers.add(header);
        fits.add(fit);
        return this;
    }

    /** Adds a row; cells that are not given stay empty. */
    public TextTable row(Object... cells) {
        return row(Arrays.stream(cells).map(String::valueOf).toList());
    }

    public TextTable row(List<String> cells) {
        List<String> row = new ArrayList<>(cells);
        while (row.size() < headers.size()) {
            row.add("");
        }
        rows.add(row);
        return this;
    }

    /** Keeps figures on one line with their units. */
    TextTable unbroken() {
        rows.replaceAll(row -> row.stream().map(Unbroken::text).toList());
        return this;
    }

    /** The width of the table when nothing is folded. */
    public int naturalWidth() {
        return total(naturalWidths());
    }

    /** The lines, the first for the headers where there are any, at most {@code width} wide so far as folding can make them. */
    public List<String> lines(int width) {
        int[] widths = naturalWidths();
        for (int widest = widestFlexible(widths); total(widths) > width && widest >= 0; widest = widestFlexible(widths)) {
            widths[widest]--;
        }
        List<String> lines = new ArrayList<>();
        if (headers.stream().anyMatch(header -> !header.isEmpty())) {
            add(lines, headers, widths);
        }
        rows.forEach(row -> add(lines, row, widths));
        return lines;
    }

    private int[] naturalWidths() {
        int[] widths = new int[headers.size()];
        for (int column = 0; column < widths.length; column++) {
            widths[column] = headers.get(column).length();
            for (List<String> row : rows) {
                widths[column] = Math.max(widths[column], row.get(column).length());
            }
        }
        return widths;
    }

    private static int total(int[] widths) {
        return Arrays.stream(widths).sum() + GAP.length() * (widths.length - 1);
    }

    private int widestFlexible(int[] widths) {
        int widest = -1;
        for (int column = 0; column < widths.length; column++) {
            if (fits.get(column) == Fit.FLEXIBLE && widths[column] > LEAST_FLEXIBLE_WIDTH
                    && (widest < 0 || widths[column] > widths[widest])) {
                widest = column;
            }
        }
        return widest;
    }

    private void add(List<String> lines, List<String> row, int[] widths) {
        List<List<String>> folded = new ArrayList<>();
        int height = 1;
        for (int column = 0; column < widths.length; column++) {
            List<String> cell = Paragraph.fold(row.get(column), widths[column]);
            folded.add(cell);
            height = Math.max(height, cell.size());
        }
        for (int line = 0; line < height; line++) {
            StringBuilder text = new StringBuilder();
            for (int column = 0; column < widths.length; column++) {
                String cell = line < folded.get(column).size() ? folded.get(column).get(line) : "";
                String blanks = " ".repeat(Math.max(0, widths[column] - cell.length()));
                text.append(column == 0 ? "" : GAP).append(fits.get(column) == Fit.RIGHT ? blanks + cell : cell + blanks);
            }
            lines.add(text.toString().stripTrailing());
        }
    }
}
