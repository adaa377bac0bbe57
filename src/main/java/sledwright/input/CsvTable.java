package sledwright.input;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A table read from CSV.
 *
 * @param columns the columns that the table has
 * @param whole   whether every column that is needed was there and every row could be read
 */
public record CsvTable(List<Row> rows, Set<String> columns, boolean whole) {

    public CsvTable {
        rows = List.copyOf(rows);
        columns = Set.copyOf(columns);
    }

    /**
     * One row.
     *
     * @param columns      column -> place in {@code cells}
     * @param decimalComma whether figures may have a decimal comma
     */
    public record Row(Place place, Map<String, Integer> columns, List<String> cells, boolean decimalComma, Faults faults)
            implements Fields {

        @Override
        public boolean has(String name) {
            return !cell(name).isEmpty();
        }

        @Override
        public Optional<Field> field(String name) {
            String cell = cell(name);
            return cell.isEmpty() ? Optional.empty() : Optional.of(new Field(name, cell, place, decimalComma));
        }

        private String cell(String name) {
            Integer column = columns.get(name);
            return column == null ? "" : cells.get(column);
        }

        /** A column that is missing was reported once for all rows. */
        @Override
        public void missing(String name) {
            if (columns.containsKey(name)) {
                faults.add(place, name + " is empty");
            }
        }
    }
}
