package sledwright.input;

import java.util.List;
import java.util.regex.Pattern;

/**
 * A sheet of cells, before anybody says which row is the header.
 *
 * @param file         as the user named it
 * @param sheet        the sheet's name; empty for CSV
 * @param rows         the rows that hold anything
 * @param decimalComma whether texts may have decimal commas, where nobody says otherwise
 */
public record Grid(String file, String sheet, List<Row> rows, boolean decimalComma) {

    /** What a cell holds. */
    public enum Kind {
        EMPTY, TEXT, NUMBER, DATE, ERROR
    }

    /**
     * A cell.
     *
     * @param text a number with a decimal point, a date as 2025-03-31, else as written
     */
    public record Cell(Kind kind, String text) {

        public static final Cell EMPTY = new Cell(Kind.EMPTY, "");
        private static final Pattern CONTROLS = Pattern.compile("\\p{Cc}+");

        /** Line ends inside a cell, and whatever else cannot stand in a line, are blanks. */
        static Cell text(String text) {
            String line = text.chars().anyMatch(Character::isISOControl) ? CONTROLS.matcher(text).replaceAll(" ").strip() : text;
            return line.isEmpty() ? EMPTY : new Cell(Kind.TEXT, line);
        }
    }

    /**
     * A row.
     *
     * @param number its line or the sheet's own number, from 1
     */
    public record Row(int number, List<Cell> cells) {

        public Row {
            cells = List.copyOf(cells);
        }

        /** The cell of a column, from 0; empty beyond the last. */
        public Cell cell(int column) {
            return column < cells.size() ? cells.get(column) : Cell.EMPTY;
        }

        public boolean isEmpty() {
            return cells.stream().allMatch(cell -> cell.kind() == Kind.EMPTY);
        }
    }

    public Grid {
        rows = List.copyOf(rows);
    }

    public boolean isCsv() {
        return sheet.isEmpty();
    }

    /** What a person calls a cell: C7. */
    public static String address(int column, int row) {
        return letters(column) + row;
    }

    /** What a person calls a column, which counts from 0: C. */
    public static String letters(int column) {
        StringBuilder letters = new StringBuilder();
        for (int left = column + 1; left > 0; left = (left - 1) / 26) {
            letters.insert(0, (char) ('A' + (left - 1) % 26));
        }
        return letters.toString();
    }
}
