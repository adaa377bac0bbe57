package sledwright.catalog.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import sledwright.catalog.CatalogTable;
import sledwright.catalog.intake.Incoming.Told;
import sledwright.input.Fault;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Grid;
import sledwright.input.GridReader;
import sledwright.input.Place;

/**
 * A supplier's list in our columns.
 *
 * @param refused why rows are not among {@code rows}
 * @param read    every row that could be read so far that its key is known, taken or not
 * @param nameless the first row that does not say its key; empty: all do
 * @param unread  headings over columns that are not read, where they should be ours
 */
record Delivery(List<Incoming> rows, List<Fault> refused, List<Incoming> read, Optional<Place> nameless, List<Fault> unread) {

    Delivery {
        rows = List.copyOf(rows);
        refused = List.copyOf(refused);
        read = List.copyOf(read);
        unread = List.copyOf(unread);
    }

    /** Empty, with faults, when the sheet has not the headings. */
    static Optional<Delivery> of(Grid grid, Mapping mapping, boolean ownHeadings, CatalogTable table, Faults faults) {
        List<String> optional = ownHeadings ? table.order().stream().filter(column -> !table.key().contains(column)
                || !table.whenEmpty(column).isEmpty()).toList() : List.of();
        Optional<Headings> found = Headings.find(grid, mapping, optional, faults);
        if (found.isPresent() && grid.rows().size() - found.get().firstRow() > GridReader.MOST_ROWS) {
            faults.add(Place.of(grid.file()), "has more than %s rows below its headings; split it".formatted(GridReader.MOST_ROWS));
            return Optional.empty();
        }
        return found.map(headings -> new Reader(grid, mapping, table, headings)
                .delivery(ownHeadings ? headings.unread(table) : List.of()));
    }

    /** The same, what rows of offers say of a whole lot being said of each of its price breaks. */
    Delivery ofLots(List<MergedRow> ours) {
        WholeLots lots = new WholeLots(ours, read);
        return new Delivery(lots.spread(rows), refused, lots.spread(read), nameless, unread);
    }

    /**
     * Where a column of ours is found.
     *
     * @param column  theirs, from 0; below 0: nowhere, it is constant
     * @param letters what a person calls theirs
     */
    private record Origin(ColumnRule rule, int column, String letters) {

        /** Empty where they have no such column. */
        static Optional<Origin> of(ColumnRule rule, Headings headings) {
            return rule.heading().isEmpty() ? Optional.of(new Origin(rule, -1, ""))
                    : rule.heading().flatMap(headings::column).map(column -> new Origin(rule, column, Grid.letters(column)));
        }

        boolean isConstant() {
            return column < 0;
        }
    }

    private static final class Reader {

        private final Grid grid;
        private final CatalogTable table;
        private final Headings headings;
        private final List<Origin> origins;
        private final Map<Integer, Origin> breaks = new TreeMap<>();
        private final CellReader cells;
        private final Faults refused = new Faults();

        Reader(Grid grid, Mapping mapping, CatalogTable table, Headings headings) {
            this.grid = grid;
            this.table = table;
            this.headings = headings;
            origins = mapping.rules().stream().flatMap(rule -> Origin.of(rule, headings).stream()).toList();
            mapping.breaks().forEach(priced -> Origin.of(priced.price(), headings).ifPresent(origin -> breaks.put(priced.from(), origin)));
            cells = new CellReader(table, mapping, grid);
        }

        Delivery delivery(List<Fault> unread) {
            List<Incoming> rows = new ArrayList<>();
            List<Incoming> named = new ArrayList<>();
            Place nameless = null;
            Map<List<String>, Place> seen = new HashMap<>();
            for (Grid.Row row : grid.rows().subList(Math.min(headings.firstRow(), grid.rows().size()), grid.rows().size())) {
                int before = refused.size();
                refuseMore(row);
                List<Incoming> read = read(row);
                for (Incoming each : read) {
                    List<String> key = RowKey.of(table, each::text);
                    Place earlier = refused.since(before) ? null : seen.putIfAbsent(key, each.place());
                    if (earlier != null) {
                        refused.add(each.place(), "%s stands twice, first at line %s".formatted(RowKey.words(table, key), earlier.line()));
                    }
                    boolean knowsKey = table.key().stream().noneMatch(column -> isMissing(column, each.cells()));
                    if (knowsKey) {
                        named.add(each);
                    } else if (nameless == null) {
                        nameless = each.place();
                    }
                }
                if (!refused.since(before)) {
                    rows.addAll(read);
                }
            }
            return new Delivery(rows, refused.all(), named, Optional.ofNullable(nameless), unread);
        }

        /** Beyond its headings a row of CSV has what one of its cells was torn into, such as 21,50 without quotes. */
        private void refuseMore(Grid.Row row) {
            for (int column = headings.width(); grid.isCsv() && column < row.cells().size(); column++) {
                if (!row.cell(column).text().isEmpty()) {
                    refused.add(new Place(grid.file(), row.number()), ("cell %s \"%s\" stands under no heading; a cell that has in it what"
                            + " separates cells needs quotes around it").formatted(Grid.address(column, row.number()),
                            Field.shown(row.cell(column).text())));
                }
            }
        }

        /** What a row of theirs is of ours: a row for each price break that has a price. */
        private List<Incoming> read(Grid.Row row) {
            Place place = new Place(grid.file(), row.number());
            Map<String, Told> told = new HashMap<>();
            origins.forEach(origin -> tell(origin, row, place, told));
            List<Incoming> read = new ArrayList<>();
            breaks.forEach((from, origin) -> {
                Map<String, Told> priced = new HashMap<>(told);
                tell(origin, row, place, priced);
                if (priced.containsKey(origin.rule().column())) {
                    priced.put("min_quantity", new Told(String.valueOf(from), ""));
                    read.add(new Incoming(place, priced));
                }
            });
            if (read.isEmpty()) {
                read.add(new Incoming(place, told));
                if (!breaks.isEmpty()) {
                    refused.add(place, "none of the columns of breaks has a price");
                }
            }
            table.key().stream().filter(column -> isMissing(column, read.get(0).cells()))
                    .forEach(column -> refused.add(place, column + " is empty"));
            return read;
        }

        private boolean isMissing(String column, Map<String, Told> told) {
            return !told.containsKey(column) && table.whenEmpty(column).isEmpty();
        }

        private void tell(Origin origin, Grid.Row row, Place place, Map<String, Told> told) {
            ColumnRule rule = origin.rule();
            String address = origin.isConstant() ? "" : origin.letters() + row.number();
            CellReader.Read read = origin.isConstant() ? CellReader.Read.of(rule.constant())
                    : cells.read(row.cell(origin.column()), rule);
            read.problem().ifPresent(problem -> refused.add(place, "%s (cell %s) \"%s\": %s".formatted(rule.column(), address,
                    Field.shown(read.text()), problem)));
            if (!read.text().isEmpty()) {
                told.put(rule.column(), new Told(read.text(), address));
            }
        }
    }
}
