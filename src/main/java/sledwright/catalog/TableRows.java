package sledwright.catalog;

import java.util.List;
import sledwright.input.CsvTable;
import sledwright.input.Fields;

/**
 * The rows of a table, from wherever they come.
 *
 * @param whole whether every row and every column that is needed could be read
 */
public record TableRows(List<? extends Fields> rows, boolean whole) {

    /** The rows of a table that a shop does without. */
    static final TableRows NONE = new TableRows(List.of(), true);

    public TableRows {
        rows = List.copyOf(rows);
    }

    static TableRows of(CsvTable table) {
        return new TableRows(table.rows(), table.whole());
    }
}
