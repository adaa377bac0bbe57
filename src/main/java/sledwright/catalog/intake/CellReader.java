package sledwright.catalog.intake;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import sledwright.catalog.CatalogTable;
import sledwright.input.Figure;
import sledwright.input.Grid;
import sledwright.input.Grid.Kind;

/** Turns a cell of theirs into the text of one of ours. */
final class CellReader {

    private static final List<Character> WIDE_BLANKS = List.of('\u00A0', '\u2007', '\u202F');

    private final CatalogTable table;
    private final Mapping.Notation notation;
    private final boolean decimalComma;
    private final Optional<DateTimeFormatter> dates;
    private final Optional<Pattern> grouped;

    /**
     * What became of a cell.
     *
     * @param text    ours, a figure with a decimal point; where there is a problem, as their file has it
     * @param problem what is wrong; empty: nothing
     */
    record Read(String text, Optional<String> problem) {

        static Read of(String text) {
            return new Read(text, Optional.empty());
        }

        static Read problem(String text, String problem) {
            return new Read(text, Optional.of(problem));
        }
    }

    CellReader(CatalogTable table, Mapping mapping, Grid grid) {
        this.table = table;
        notation = mapping.notation();
        decimalComma = notation.decimal().map(sign -> sign == ',').orElse(grid.decimalComma());
        dates = notation.datePattern().map(pattern -> DateTimeFormatter.ofPattern(pattern, Locale.ROOT));
        grouped = notation.thousands().map(sign -> Pattern.compile("[+-]?\\d{1,3}(%s\\d{3})+%s".formatted(
                Pattern.quote(String.valueOf(sign)), decimalComma ? "(,\\d+)?" : "(\\.\\d+)?")));
    }

    Read read(Grid.Cell cell, ColumnRule rule) {
        if (cell.kind() == Kind.ERROR) {
            return Read.problem(cell.text(), "is an error of the spreadsheet");
        }
        String text = stripped(Formulas.restored(narrow(cell.text()).strip()), rule.strip());
        String word = rule.words().get(text.toLowerCase(Locale.ROOT));
        if (word != null) {
            return Read.of(word);
        }
        if (text.isEmpty()) {
            return Read.of(rule.constant());
        }
        if (table.isDay(rule.column())) {
            return cell.kind() == Kind.DATE ? Read.of(text) : day(text);
        }
        if (table.isText(rule.column())) {
            return Read.of(text);
        }
        return cell.kind() == Kind.DATE ? Read.problem(text, "is a date and must be a number; the cell has the wrong format")
                : figure(text, cell.kind() == Kind.NUMBER, rule);
    }

    private static String narrow(String text) {
        String narrow = text;
        for (char wide : WIDE_BLANKS) {
            narrow = narrow.replace(wide, ' ');
        }
        return narrow;
    }

    private static String stripped(String text, String strip) {
        String left = text;
        if (!strip.isEmpty() && left.startsWith(strip)) {
            left = left.substring(strip.length()).strip();
        }
        if (!strip.isEmpty() && left.endsWith(strip)) {
            left = left.substring(0, left.length() - strip.length()).strip();
        }
        return left;
    }

    private Read day(String text) {
        if (dates.isEmpty()) {
            return Read.of(text);
        }
        try {
            LocalDate day = LocalDate.parse(text, dates.get());
            // What is no day, such as 31 February, is read as the last of its month, and as one of the next where that is allowed.
            if (day.equals(LocalDate.parse(text, dates.get().withResolverStyle(ResolverStyle.LENIENT)))) {
                return Read.of(day.toString());
            }
        } catch (DateTimeException other) {
            // As what is no day.
        }
        return Read.problem(text, "must be a date as %s".formatted(notation.datePattern().get()));
    }

    private Read figure(String text, boolean typed, ColumnRule rule) {
        String single = typed ? text : withoutThousands(text);
        Figure figure = Figure.parse(single, !typed && decimalComma);
        if (figure.value().isEmpty()) {
            return Read.problem(text, figure.problem());
        }
        BigDecimal value = figure.value().get().multiply(rule.factor());
        if (rule.decimals().isPresent()) {
            value = value.setScale(rule.decimals().getAsInt(), RoundingMode.HALF_UP);
        }
        return Read.of(value.scale() < 0 ? value.toPlainString() : plain(value, figure.value().get(), rule));
    }

    /** A figure that nothing was done to keeps its zeros, as prices are written with them. */
    private static String plain(BigDecimal value, BigDecimal given, ColumnRule rule) {
        boolean untouched = rule.decimals().isEmpty() && value.equals(given);
        BigDecimal shown = untouched || rule.decimals().isPresent() ? value : value.stripTrailingZeros();
        return shown.toPlainString();
    }

    /** The text without what separates thousands, where it stands in the right places; else as it is, to be refused. */
    private String withoutThousands(String text) {
        boolean separated = grouped.isPresent() && grouped.get().matcher(text).matches();
        return separated ? text.replace(String.valueOf(notation.thousands().orElseThrow()), "") : text;
    }
}
