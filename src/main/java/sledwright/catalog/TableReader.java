package sledwright.catalog;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import sledwright.input.CsvReader;
import sledwright.input.CsvTable;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Located;

/** Reads one CSV file of the catalogue row by row. */
final class TableReader {

    private TableReader() {
    }

    /** @param each turns a row into what it describes; its result is dropped when it adds a fault */
    static <T> Table<T> read(Path file, CsvReader.Columns columns, Function<CsvTable.Row, T> each, Faults faults) {
        CsvTable table = CsvReader.read(file, columns, faults);
        List<Located<T>> rows = new ArrayList<>(table.rows().size());
        List<Located<String>> skus = new ArrayList<>(table.rows().size());
        for (CsvTable.Row row : table.rows()) {
            int before = faults.size();
            T read = each.apply(row);
            if (!faults.since(before)) {
                rows.add(new Located<>(read, row.place()));
            }
            Optional<Field> sku = row.field("sku");
            sku.ifPresent(field -> skus.add(new Located<>(field.text(), row.place())));
        }
        return new Table<>(table.whole() ? rows : List.of(), skus, table.whole());
    }
}
