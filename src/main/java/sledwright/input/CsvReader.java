package sledwright.input;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Reads CSV as spreadsheets save it: UTF-8, with or without a byte-order mark, any line ends, columns in any order. The header
 * shows whether commas, semicolons or tabs separate the cells; without commas between cells, figures may have a decimal comma.
 */
public final class CsvReader {

    /** The largest table, in millions of bytes. */
    static final int MOST_MEGABYTES = 64;
    /** Some spreadsheets name the separator in a line of its own. */
    static final Pattern SEPARATOR_LINE = Pattern.compile("\\Asep=[,;\\t](?=\\R)");

    /**
     * The columns of a table.
     *
     * @param order    all, in the order in which people expect them; a file may have another
     * @param optional those that a file may be without
     */
    public record Columns(List<String> order, List<String> optional) {

        public Columns {
            order = List.copyOf(order);
            optional = List.copyOf(optional);
        }

        /** Those that a file must have. */
        public List<String> needed() {
            return order.stream().filter(name -> !optional.contains(name)).toList();
        }
    }

    private final String file;
    private final Columns known;
    private final Faults faults;
    private final Map<String, Integer> columns = new HashMap<>();
    private final List<CsvTable.Row> rows = new ArrayList<>();
    private int width = -1;
    private boolean whole = true;

    private CsvReader(String file, Columns known, Faults faults) {
        this.file = file;
        this.known = known;
        this.faults = faults;
    }

    /** The rows that can be read; whatever is wrong with the others goes to {@code faults}. */
    public static CsvTable read(Source source, Columns known, Faults faults) {
        CsvReader reader = new CsvReader(source.name(), known, faults);
        Optional<String> text = TextFile.read(source, MOST_MEGABYTES, faults);
        reader.whole = text.isPresent();
        text.ifPresent(reader::parse);
        return new CsvTable(reader.rows, reader.columns.keySet(), reader.whole);
    }

    private void parse(String text) {
        String table = SEPARATOR_LINE.matcher(text).replaceFirst("");
        char separator = separator(table);
        CsvCells.Broken broken = CsvCells.read(table, separator, (cells, line) -> row(cells, line, separator != ','));
        if (broken != null) {
            whole = false;
            faults.add(new Place(file, broken.line()), broken.problem());
        }
        if (width < 0 && whole) {
            whole = false;
            faults.add(new Place(file, 1), "the file has no header; it needs the columns " + String.join(", ", known.needed()));
        }
    }

    private char separator(String text) {
        String header = text.lines().filter(line -> !line.isBlank()).findFirst().orElse("");
        Set<String> names = Set.copyOf(known.order());
        Comparator<Character> byKnown = Comparator.comparingLong(separator -> cells(header, separator).filter(names::contains).count());
        return Stream.of(',', ';', '\t').max(byKnown.thenComparingLong(separator -> cells(header, separator).count())).orElse(',');
    }

    private static Stream<String> cells(String header, char separator) {
        return Arrays.stream(header.split(Pattern.quote(String.valueOf(separator)))).map(cell -> cell.replace("\"", "").strip());
    }

    private void row(List<String> cells, int line, boolean decimalComma) {
        if (cells.stream().allMatch(String::isEmpty)) {
            return;
        }
        Place place = new Place(file, line);
        if (width < 0) {
            header(cells, place);
        } else if (cells.size() < width || cells.subList(width, cells.size()).stream().anyMatch(cell -> !cell.isEmpty())) {
            whole = false;
            faults.add(place, "the row has %s, the header %s".formatted(cells.size() == 1 ? "1 cell" : cells.size() + " cells", width));
        } else {
            CsvTable.Row row = new CsvTable.Row(place, columns, cells, decimalComma, faults);
            if (cells.stream().anyMatch(CsvReader::hasControls)) {
                whole = false;
                columns.keySet().forEach(name -> row.field(name).filter(field -> hasControls(field.text()))
                        .ifPresent(field -> field.fault("must stand on one line, without tabs", faults)));
            } else {
                rows.add(row);
            }
        }
    }

    /** Line ends and tabs; other controls are in no text. */
    private static boolean hasControls(String text) {
        return !Printable.ascii(text) && text.chars().anyMatch(Character::isISOControl);
    }

    private void header(List<String> cells, Place place) {
        width = cells.size();
        while (cells.get(width - 1).isEmpty()) {
            width--;
        }
        List<String> names = known.order();
        Nearest nearest = new Nearest(names);
        for (int i = 0; i < width; i++) {
            String name = cells.get(i);
            if (!names.contains(name)) {
                faults.add(place, name.isEmpty()
                        ? "column %s has no name".formatted(i + 1)
                        : "unknown column \"%s\"%s".formatted(Field.shown(name), nearest.hint(name)));
            } else if (columns.putIfAbsent(name, i) != null) {
                faults.add(place, "column " + name + " stands twice");
            }
        }
        for (String name : known.needed()) {
            if (!columns.containsKey(name)) {
                whole = false;
                faults.add(place, "column " + name + " is missing");
            }
        }
    }
}
