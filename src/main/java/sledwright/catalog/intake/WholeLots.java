package sledwright.catalog.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import sledwright.catalog.CatalogTable;
import sledwright.catalog.intake.Incoming.Told;

/** What rows of offers say of their lot, such as its stock, where they name no price break: it holds for all that the lot has. */
final class WholeLots {

    private static final CatalogTable TABLE = CatalogTable.OFFERS;
    private static final String FROM = "min_quantity";

    private final Map<List<String>, Set<String>> standing = new HashMap<>();
    private final Set<List<String>> named = new HashSet<>();

    /** @param read every row of theirs that says which it is */
    WholeLots(List<MergedRow> ours, List<Incoming> read) {
        ours.stream().map(row -> RowKey.of(TABLE, column -> row.cells().getOrDefault(column, "")))
                .forEach(key -> standing.computeIfAbsent(key.subList(0, 2), lot -> new LinkedHashSet<>()).add(key.get(2)));
        read.forEach(row -> named.add(RowKey.of(TABLE, row::text)));
    }

    /** The rows, with one for each price break that they speak of and that no other row names. */
    List<Incoming> spread(List<Incoming> rows) {
        return rows.stream().flatMap(row -> row.text(FROM).isEmpty() ? spread(row) : Stream.of(row)).toList();
    }

    private Stream<Incoming> spread(Incoming row) {
        List<String> key = RowKey.of(TABLE, row::text);
        Map<String, Told> cells = new HashMap<>(row.cells());
        cells.keySet().retainAll(TableMerge.OF_A_LOT);
        if (cells.isEmpty()) {
            return Stream.of(row);
        }
        TABLE.key().stream().filter(row.cells()::containsKey).forEach(column -> cells.put(column, row.cells().get(column)));
        Set<String> breaks = standing.getOrDefault(key.subList(0, 2), Set.of());
        List<Incoming> all = new ArrayList<>();
        boolean priced = row.cells().containsKey("unit_price") || row.cells().containsKey("unit_cost");
        if (priced || breaks.isEmpty() || breaks.contains(key.get(2))) {
            all.add(row);
        }
        for (String from : breaks) {
            if (!from.equals(key.get(2)) && !named.contains(List.of(key.get(0), key.get(1), from))) {
                cells.put(FROM, new Told(from, ""));
                all.add(new Incoming(row.place(), cells));
            }
        }
        return all.stream();
    }
}
