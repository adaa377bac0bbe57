package sledwright.catalog;

import java.util.List;
import java.util.function.UnaryOperator;
import sledwright.input.Located;

/**
 * The rows of one CSV file.
 *
 * @param rows  the rows without a fault
 * @param skus  the sku of every row, also of faulty ones
 * @param whole whether all rows were seen
 */
record Table<T>(List<Located<T>> rows, List<Located<String>> skus, boolean whole) {

    Table {
        rows = List.copyOf(rows);
        skus = List.copyOf(skus);
    }

    /** The same rows, each changed. */
    Table<T> each(UnaryOperator<T> changed) {
        return new Table<>(rows.stream().map(row -> new Located<>(changed.apply(row.value()), row.place())).toList(), skus, whole);
    }
}
