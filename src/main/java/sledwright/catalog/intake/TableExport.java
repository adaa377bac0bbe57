package sledwright.catalog.intake;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import sledwright.catalog.CatalogReader;
import sledwright.catalog.CatalogTable;
import sledwright.input.CsvTable;
import sledwright.input.Faults;
import sledwright.input.FaultsException;

/**
 * A table as it stands in a catalogue, figures with decimal points.
 *
 * @param rows column -> text; a column without text is left out
 */
public record TableExport(CatalogTable table, List<Map<String, String>> rows) {

    public TableExport {
        rows = List.copyOf(rows);
    }

    /** @throws FaultsException with every fault of the catalogue */
    public static TableExport of(Path folder, CatalogTable table) {
        CatalogReader.read(folder);
        Faults faults = new Faults();
        CsvTable read = table.read(folder, faults);
        faults.throwIfAny();
        return new TableExport(table, TableMerge.rows(table, read).stream().map(MergedRow::cells).toList());
    }

    /** All columns that the table may have. */
    public List<String> columns() {
        return table.order();
    }

    /** A file that imports back to the same rows; no text of it runs as a formula. */
    public String csv() {
        return TableText.of(columns(), rows, Formulas::defused);
    }
}
