package sledwright.catalog.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.catalog.CatalogTable;
import sledwright.catalog.intake.Incoming.Told;
import sledwright.input.Fault;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Grid;
import sledwright.input.Place;

/**
 * A supplier's list in our columns.
 *
 * @param refused why rows are not among {@code rows}
 */
record Delivery(List<Incoming> rows, List<Fault> refused) {

    Delivery {
        rows = List.copyOf(rows);
        refused = List.copyOf(refused);
    }

    /** Empty, with faults, when the sheet has not the headings. */
    static Optional<Delivery> of(Grid grid, Mapping mapping, boolean ownHeadings, CatalogTable table, Faults faults) {
        List<String> optional = ownHeadings ? table.order().stream().filter(column -> !table.key().contains(column)
                || !table.whenEmpty(column).isEmpty()).toList() : List.of();
        return Headings.find(grid, mapping, optional, faults).map(headings -> new Reader(grid, mapping, table, headings).delivery());
    }

    private static final class Reader {

        private final Grid grid;
        private final Mapping mapping;
        private final CatalogTable table;
        private final Headings headings;
        private final CellReader cells;
        private final Faults refused = new Faults();

        Reader(Grid grid, Mapping mapping, CatalogTable table, Headings headings) {
            this.grid = grid;
            this.mapping = mapping;
            this.table = table;
            this.headings = headings;
            cells = new CellReader(table, mapping, grid);
        }

        Delivery delivery() {
            List<Incoming> rows = new ArrayList<>();
            Map<List<String>, Place> seen = new HashMap<>();
            for (Grid.Row row : grid.rows().subList(Math.min(headings.firstRow(), grid.rows().size()), grid.rows().size())) {
                int before = refused.size();
                Incoming read = read(row);
                List<String> key = RowKey.of(table, read::text);
                Place earlier = refused.since(before) ? null : seen.putIfAbsent(key, read.place());
                if (earlier != null) {
                    refused.add(read.place(), "%s stands twice, first at line %d".formatted(RowKey.words(table, key), earlier.line()));
                }
                if (!refused.since(before)) {
                    rows.add(read);
                }
            }
            return new Delivery(rows, refused.all());
        }

        private Incoming read(Grid.Row row) {
            Place place = new Place(grid.file(), row.number());
            Map<String, Told> told = new HashMap<>();
            for (ColumnRule rule : mapping.rules()) {
                Optional<Integer> column = rule.heading().flatMap(headings::column);
                if (rule.heading().isPresent() && column.isEmpty()) {
                    continue;
                }
                String address = column.map(known -> Grid.address(known, row.number())).orElse("");
                CellReader.Read read = column.map(known -> cells.read(row.cell(known), rule))
                        .orElseGet(() -> CellReader.Read.of(rule.constant()));
                read.problem().ifPresent(problem -> refused.add(place, "%s (cell %s) \"%s\": %s".formatted(rule.column(), address,
                        Field.shown(read.text()), problem)));
                if (!read.text().isEmpty()) {
                    told.put(rule.column(), new Told(read.text(), address));
                }
            }
            for (String column : table.key()) {
                if (!told.containsKey(column) && table.whenEmpty(column).isEmpty()) {
                    refused.add(place, column + " is empty");
                }
            }
            return new Incoming(place, told);
        }
    }
}
