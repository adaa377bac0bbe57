package sledwright.catalog.intake;

import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/** Rows of a table as the text of its file: commas between cells, decimal points, a line feed behind each row. */
public final class TableText {

    private TableText() {
    }

    /**
     * The file.
     *
     * @param rows column -> text for each row
     * @param cell what is written for a text
     */
    public static String of(List<String> columns, List<Map<String, String>> rows, UnaryOperator<String> cell) {
        StringBuilder text = new StringBuilder(String.join(",", columns)).append('\n');
        for (Map<String, String> row : rows) {
            text.append(columns.stream().map(column -> quoted(cell.apply(row.getOrDefault(column, "")))).collect(Collectors.joining(",")))
                    .append('\n');
        }
        return text.toString();
    }

    private static String quoted(String text) {
        boolean plain = text.chars().noneMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r' || c == ';' || c == '\t')
                && text.equals(text.strip());
        return plain ? text : "\"" + text.replace("\"", "\"\"") + "\"";
    }
}
