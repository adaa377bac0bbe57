package sledwright.report.offer;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import sledwright.report.offer.Offer.Option;
import sledwright.report.page.PaperFont;

/** How many options a sheet of paper holds side by side; widths are in ems of its text. */
final class Sheet {

    /** Options that a reader compares at a glance. */
    private static final int MOST_OPTIONS = 5;
    /** The narrower paper without its margins: 174 mm, in letters of 9.5 points. */
    private static final double WIDTH = 174 / 25.4 * 72 / 9.5;
    /** What stands between two columns. */
    private static final double GAP = 1.1;
    /** Heads of columns are set smaller. */
    private static final double HEAD = 8 / 9.5;

    private Sheet() {
    }

    /** As few tables as the options need: each as wide as paper at most, and of about as many options as the others. */
    static <T> List<T> split(List<Option> options, Function<List<Option>, T> table, ToDoubleFunction<T> width) {
        int most = Math.min(MOST_OPTIONS, options.size());
        List<T> tables = tables(options, table, most);
        while (most > 1 && tables.stream().anyMatch(some -> width.applyAsDouble(some) - GAP > WIDTH)) {
            most--;
            tables = tables(options, table, most);
        }
        return tables;
    }

    private static <T> List<T> tables(List<Option> options, Function<List<Option>, T> table, int most) {
        List<T> tables = new ArrayList<>();
        int number = (options.size() + most - 1) / most;
        int from = 0;
        for (int left = number; left > 0; left--) {
            int to = from + (options.size() - from + left - 1) / left;
            tables.add(table.apply(options.subList(from, to)));
            from = to;
        }
        return List.copyOf(tables);
    }

    /** The least width of an option's column. */
    static double column(String head, List<List<SideBySide.Cell>> rows, int option, ToDoubleFunction<String> width) {
        return Math.max(PaperFont.width(head, true) * HEAD + GAP,
                rows.stream().mapToDouble(cells -> width.applyAsDouble(cells.get(option).text())).max().orElse(0));
    }

    /** The least width of a cell whose text may take several lines. */
    static double cell(String text) {
        return PaperFont.widestPiece(text, false) + GAP;
    }

    static double strong(String text) {
        return PaperFont.widestPiece(text, true) + GAP;
    }

    /** The width of a cell whose text stays on one line, bold or not. */
    static double whole(String text) {
        return PaperFont.width(text, true) + GAP;
    }
}
