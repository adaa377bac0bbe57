package sledwright.input;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads a file of rows and cells: a workbook, or CSV whose separator is guessed. */
public final class GridReader {

    /** More rows below the headings are no price list. */
    public static final int MOST_ROWS = 200_000;
    /** Above the headings. */
    public static final int MOST_HEADER_ROWS = 1000;

    /** How many lines decide the separator. */
    private static final int TELLING_LINES = 50;
    private static final List<Character> SEPARATORS = List.of(';', '\t', ',', '|');

    private GridReader() {
    }

    /**
     * The cells of a file; empty, with faults, when it cannot be read.
     *
     * @param sheet     the sheet of a workbook; empty: the only one that holds anything
     * @param separator what separates the cells of CSV; empty: guessed
     */
    public static Optional<Grid> read(Source source, Optional<String> sheet, Optional<Character> separator, Faults faults) {
        String name = source.name().toLowerCase(Locale.ROOT);
        if (name.endsWith(".xlsx")) {
            return WorkbookReader.read(source, sheet, faults);
        }
        if (name.endsWith(".csv") || name.endsWith(".txt") || name.endsWith(".tsv")) {
            if (sheet.isPresent()) {
                faults.add(source.place(), "has no sheets; leave out sheet \"%s\"".formatted(Field.shown(sheet.get())));
                return Optional.empty();
            }
            return csv(source, separator, faults);
        }
        faults.add(source.place(), "must end in .xlsx, .csv, .tsv or .txt; save it as one of them");
        return Optional.empty();
    }

    private static Optional<Grid> csv(Source source, Optional<Character> separator, Faults faults) {
        Optional<String> text = TextFile.read(source, CsvReader.MOST_MEGABYTES, faults);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        int before = faults.size();
        String table = CsvReader.SEPARATOR_LINE.matcher(text.get()).replaceFirst("");
        char found = separator.orElseGet(() -> separator(table));
        List<Grid.Row> rows = new ArrayList<>();
        String name = source.name();
        CsvCells.Broken broken = CsvCells.read(table, found, (cells, line) -> {
            Grid.Row row = new Grid.Row(line, cells.stream().map(Grid.Cell::text).toList());
            if (!row.isEmpty() && !isFull(rows)) {
                rows.add(row);
            }
        });
        if (broken != null) {
            faults.add(new Place(name, broken.line()), broken.problem());
        }
        return faults.since(before) ? Optional.empty() : Optional.of(new Grid(name, "", rows, found != ','));
    }

    /** Whether there are too many rows, wherever the headings may stand. */
    static boolean isFull(List<Grid.Row> rows) {
        return rows.size() > MOST_ROWS + MOST_HEADER_ROWS;
    }

    /** The separator that stands equally often on most of the first lines. */
    private static char separator(String text) {
        List<String> lines = text.lines().filter(line -> !line.isBlank()).limit(TELLING_LINES).toList();
        return SEPARATORS.stream().max(Comparator.<Character>comparingLong(separator -> alike(lines, separator))
                .thenComparing(Comparator.comparingInt(SEPARATORS::indexOf).reversed())).orElseThrow();
    }

    private static long alike(List<String> lines, char separator) {
        List<Long> counts = lines.stream().map(line -> outsideQuotes(line).filter(c -> c == separator).count())
                .filter(count -> count > 0).toList();
        return counts.stream().mapToLong(count -> counts.stream().filter(count::equals).count()).max().orElse(0);
    }

    private static Stream<Character> outsideQuotes(String line) {
        List<Character> outside = new ArrayList<>();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            if (line.charAt(i) == '"') {
                quoted = !quoted;
            } else if (!quoted) {
                outside.add(line.charAt(i));
            }
        }
        return outside.stream();
    }
}
