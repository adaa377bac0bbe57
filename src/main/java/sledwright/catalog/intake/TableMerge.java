package sledwright.catalog.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sledwright.catalog.CatalogTable;
import sledwright.catalog.intake.Change.Edit;
import sledwright.catalog.intake.Incoming.Told;
import sledwright.input.CsvTable;
import sledwright.input.Faults;

/**
 * Our rows with theirs laid over them. A cell that they leave empty keeps what stands there; a new price break has what its lot has.
 *
 * @param rows      all rows, ours in their order, then the new ones
 * @param changes   what is new or different
 * @param unchanged how many rows of theirs say what stands there already
 */
record TableMerge(List<MergedRow> rows, List<Change> changes, int unchanged) {

    static final List<String> OF_A_LOT = List.of("supplier", "condition", "available", "lead_days", "valid_until");

    TableMerge {
        rows = List.copyOf(rows);
        changes = List.copyOf(changes);
    }

    static TableMerge of(CatalogTable table, List<MergedRow> ours, List<Incoming> theirs) {
        Map<List<String>, MergedRow> rows = new LinkedHashMap<>();
        Map<List<String>, MergedRow> lots = new HashMap<>();
        ours.forEach(row -> {
            List<String> key = RowKey.of(table, column -> row.cells().getOrDefault(column, ""));
            rows.put(key, row);
            lots.put(lot(key), row);
        });
        List<Change> changes = new ArrayList<>();
        int unchanged = 0;
        for (Incoming incoming : theirs) {
            List<String> key = RowKey.of(table, incoming::text);
            MergedRow old = rows.get(key);
            List<Edit> edits = edits(table, old, incoming);
            if (old != null && edits.isEmpty()) {
                unchanged++;
                continue;
            }
            Map<String, String> cells = new LinkedHashMap<>(old == null ? ofTheLot(table, lots.get(lot(key))) : old.cells());
            Map<String, String> addresses = new LinkedHashMap<>();
            for (Edit edit : edits) {
                Told told = incoming.cells().get(edit.column());
                cells.put(edit.column(), told.text());
                if (!told.address().isEmpty()) {
                    addresses.put(edit.column(), told.address());
                }
            }
            rows.put(key, new MergedRow(incoming.place(), cells, addresses, new Faults()));
            if (old == null) {
                edits = table.order().stream().filter(cells::containsKey).map(column -> new Edit(column, "", cells.get(column))).toList();
            }
            changes.add(new Change(key, old == null ? Change.Kind.ADDED : Change.Kind.CHANGED, edits, incoming.place()));
        }
        return new TableMerge(List.copyOf(rows.values()), changes, unchanged);
    }

    /** The part and the lot, where the table is one of offers. */
    private static List<String> lot(List<String> key) {
        return key.subList(0, Math.min(2, key.size()));
    }

    /** What all price breaks of a lot have alike; nothing for a lot that is new. */
    private static Map<String, String> ofTheLot(CatalogTable table, MergedRow other) {
        Map<String, String> cells = new LinkedHashMap<>();
        if (table == CatalogTable.OFFERS && other != null) {
            OF_A_LOT.stream().filter(other.cells()::containsKey).forEach(column -> cells.put(column, other.cells().get(column)));
        }
        return cells;
    }

    private static List<Edit> edits(CatalogTable table, MergedRow old, Incoming incoming) {
        List<Edit> edits = new ArrayList<>();
        for (String column : table.order()) {
            Told told = incoming.cells().get(column);
            String before = old == null ? "" : old.cells().getOrDefault(column, "");
            if (told != null && (old == null || !CellEquality.same(table, column, before, told.text()))) {
                edits.add(new Edit(column, before, told.text()));
            }
        }
        return edits;
    }

    /** The rows of a table as it stands, its figures with decimal points. */
    static List<MergedRow> rows(CatalogTable table, CsvTable read) {
        List<MergedRow> rows = new ArrayList<>();
        for (CsvTable.Row row : read.rows()) {
            Map<String, String> cells = new LinkedHashMap<>();
            for (String column : table.order()) {
                row.field(column).ifPresent(field -> cells.put(column,
                        row.decimalComma() && !table.isText(column) ? field.text().replace(',', '.') : field.text()));
            }
            rows.add(new MergedRow(row.place(), cells, Map.of(), row.faults()));
        }
        return rows;
    }
}
