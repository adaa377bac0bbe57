package sledwright.report.workbook;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.List;
import java.util.regex.Pattern;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import sledwright.report.workbook.WorkbookSheet.Column;

/**
 * Sheets as an XLSX workbook. Every text is stored as text, so no cell is ever a formula, whatever it begins with. Equal sheets
 * give equal bytes.
 */
public final class Workbooks {

    private static final String PROGRAM = "Sledwright";
    /** The form that the property must have: two digits, a point, four digits. */
    private static final String PROGRAM_VERSION = "01.0000";
    /** What one cell takes (ECMA-376 leaves it open; spreadsheets have this limit). */
    private static final int LONGEST_TEXT = 32_767;
    /** ECMA-376 part 1, 22.9.2.19 (ST_Xstring): what looks like an escaped character would be read as one. */
    private static final Pattern ESCAPE = Pattern.compile("_(?=x[0-9A-Fa-f]{4}_)");
    private static final double WIDTH_OF_A_CHARACTER = 1.1;
    private static final double LEAST_WIDTH = 8;
    private static final double MOST_WIDTH = 60;

    private Workbooks() {
    }

    /**
     * @param title of the workbook
     * @param day   stands in for the time at which it was made
     */
    public static byte[] of(String title, LocalDate day, List<WorkbookSheet> sheets) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            try (Workbook workbook = new Workbook(bytes, PROGRAM, PROGRAM_VERSION)) {
                workbook.properties().setTitle(plain(title));
                for (WorkbookSheet sheet : sheets) {
                    write(sheet, workbook.newWorksheet(sheet.name()));
                }
            }
            return Dated.of(bytes.toByteArray(), day);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }

    private static void write(WorkbookSheet sheet, Worksheet to) {
        int columns = sheet.columns().size();
        for (int column = 0; column < columns; column++) {
            to.value(0, column, plain(sheet.columns().get(column).header()));
        }
        to.range(0, 0, 0, columns - 1).style().bold().wrapText(true).verticalAlignment("top").fillColor("FFE3EBEB").set();
        for (int row = 0; row < sheet.rows().size(); row++) {
            for (int column = 0; column < columns; column++) {
                write(sheet.rows().get(row).get(column), sheet.columns().get(column), to, row + 1, column);
            }
        }
        for (int column = 0; column < columns; column++) {
            to.width(column, width(sheet, column));
        }
        to.freezePane(0, 1);
        if (!sheet.rows().isEmpty()) {
            to.setAutoFilter(0, 0, sheet.rows().size(), columns - 1);
        }
    }

    private static void write(Object cell, Column column, Worksheet to, int row, int at) {
        if (cell instanceof Number number) {
            to.value(row, at, number);
            if (column.decimals() != Column.AS_THEY_ARE) {
                to.style(row, at).format(column.decimals() == 0 ? "#,##0" : "#,##0." + "0".repeat(column.decimals())).set();
            }
        } else if (cell instanceof LocalDate date) {
            to.value(row, at, date);
            to.style(row, at).format("yyyy-mm-dd").set();
        } else if (cell instanceof Boolean truth) {
            to.value(row, at, truth);
        } else if (cell instanceof String text) {
            if (!text.isEmpty()) {
                to.value(row, at, plain(text));
            }
        } else {
            throw new IllegalArgumentException("no cell holds " + cell);
        }
    }

    private static double width(WorkbookSheet sheet, int column) {
        int longestWord = sheet.columns().get(column).header().lines()
                .flatMapToInt(line -> Pattern.compile(" ").splitAsStream(line).mapToInt(String::length))
                .max().orElse(0);
        int longest = sheet.rows().stream().mapToInt(row -> String.valueOf(row.get(column)).length()).max().orElse(0);
        return Math.max(LEAST_WIDTH, Math.min(MOST_WIDTH, WIDTH_OF_A_CHARACTER * Math.max(longestWord, longest) + 2));
    }

    /** The text without what XML cannot hold, and so that it is read as it stands here. */
    private static String plain(String text) {
        String safe = text.codePoints().map(character -> isText(character) ? character : 0xFFFD)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append).toString();
        String escaped = ESCAPE.matcher(safe).replaceAll("_x005F_");
        return escaped.length() <= LONGEST_TEXT ? escaped : escaped.substring(0, LONGEST_TEXT);
    }

    private static boolean isText(int character) {
        return character == '\t' || character == '\n' || character >= ' ' && Character.getType(character) != Character.SURROGATE
                && (character & 0xFFFE) != 0xFFFE;
    }
}
