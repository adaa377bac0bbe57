package sledwright.report.workbook;

import java.time.LocalDate;
import java.util.List;

/**
 * A table of a workbook, its headers on top.
 *
 * @param name as the tab shows it, at most {@value #LONGEST_NAME} characters
 * @param rows cells in the order of the columns: text, numbers, {@link Boolean} or {@link LocalDate}; an empty text is an empty cell
 */
public record WorkbookSheet(String name, List<Column> columns, List<List<Object>> rows) {

    static final int LONGEST_NAME = 31;

    /**
     * A column.
     *
     * @param decimals of its numbers, thousands apart; {@link #AS_THEY_ARE}: as many as each has, thousands together
     */
    public record Column(String header, int decimals) {

        static final int AS_THEY_ARE = -1;

        /** Texts, or numbers as they are. */
        public static Column of(String header) {
            return new Column(header, AS_THEY_ARE);
        }

        /** Amounts with a given number of decimals. */
        public static Column amounts(String header, int decimals) {
            return new Column(header, decimals);
        }
    }

    /** A name that every spreadsheet takes. */
    public static String nameOf(String words) {
        String plain = words.replaceAll("[^\\p{L}\\p{N} ]|[\\x{10000}-\\x{10FFFF}]", " ");
        return plain.substring(0, Math.min(LONGEST_NAME, plain.length())).strip();
    }

    public WorkbookSheet {
        columns = List.copyOf(columns);
        rows = rows.stream().map(List::copyOf).toList();
        for (List<Object> row : rows) {
            if (row.size() != columns.size()) {
                throw new IllegalArgumentException("sheet %s has %s columns and a row of %s cells: %s"
                        .formatted(name, columns.size(), row.size(), row));
            }
        }
        if (name.isEmpty() || name.length() > LONGEST_NAME || name.matches(".*[\\[\\]:*?/\\\\].*")) {
            throw new IllegalArgumentException("no spreadsheet takes the sheet name " + name);
        }
    }
}
