package sledwright.catalog;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Fields;
import sledwright.input.Located;

/** Reads one table of the catalogue row by row. */
final class TableReader {

    private TableReader() {
    }

    /** @param each turns a row into what it describes; its result is dropped when it adds a fault */
    static <T> Table<T> read(TableRows table, Function<Fields, T> each, Faults faults) {
        List<Located<T>> rows = new ArrayList<>(table.rows().size());
        List<Located<String>> skus = new ArrayList<>(table.rows().size());
        for (Fields row : table.rows()) {
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
