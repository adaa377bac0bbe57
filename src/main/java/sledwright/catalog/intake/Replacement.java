package sledwright.catalog.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sledwright.catalog.CatalogTable;
import sledwright.catalog.intake.Change.Edit;
import sledwright.catalog.intake.Change.Kind;
import sledwright.catalog.intake.Mapping.Whole;
import sledwright.domain.Lot;
import sledwright.domain.SupplierNames;
import sledwright.input.Faults;
import sledwright.input.Place;

/**
 * What a list takes away by leaving it out, where it is the whole of what its suppliers have, or of its lots: a part that it does not
 * name is sold out there; of a lot that it names the price breaks go that it does not have. A row that cannot be taken is named all the
 * same.
 */
final class Replacement {

    private static final CatalogTable TABLE = CatalogTable.OFFERS;
    private static final String AVAILABLE = "available";

    private final Whole whole;
    private final SupplierNames suppliers;
    private final Place list;
    private final Set<List<String>> named = new HashSet<>();
    private final Set<List<String>> namedLots = new HashSet<>();
    private final Set<List<String>> scope = new HashSet<>();

    /** @param list the supplier's list as a whole */
    Replacement(Whole whole, SupplierNames suppliers, Place list, List<Incoming> read) {
        this.whole = whole;
        this.suppliers = suppliers;
        this.list = list;
        for (Incoming row : read) {
            List<String> key = RowKey.of(TABLE, row::text);
            named.add(key);
            namedLots.add(lot(key));
        }
        read.stream().filter(row -> !row.text("supplier").isEmpty())
                .forEach(row -> scope.add(scope(row.text("lot"), row.text("supplier"))));
    }

    private static List<String> lot(List<String> key) {
        return key.subList(0, 2);
    }

    private List<String> scope(String lot, String supplier) {
        String resolved = Lot.supplierKey(suppliers.resolved(supplier));
        return whole == Whole.SUPPLIER ? List.of(resolved) : List.of(resolved, lot);
    }

    /**
     * The table without what the list leaves out.
     *
     * @param taken the rows of theirs that it has
     */
    TableMerge in(TableMerge merge, List<Incoming> taken) {
        Set<List<String>> takenLots = new HashSet<>();
        taken.forEach(row -> takenLots.add(lot(RowKey.of(TABLE, row::text))));
        Set<List<String>> reach = new HashSet<>(scope);
        for (MergedRow row : merge.rows()) {
            List<String> key = RowKey.of(TABLE, column -> row.cells().getOrDefault(column, ""));
            if (namedLots.contains(lot(key))) {
                reach.add(scope(row));
            }
        }
        List<MergedRow> left = new ArrayList<>();
        List<Change> changes = new ArrayList<>(merge.changes());
        for (MergedRow row : merge.rows()) {
            List<String> key = RowKey.of(TABLE, column -> row.cells().getOrDefault(column, ""));
            if (takenLots.contains(lot(key)) && !named.contains(key)) {
                changes.add(new Change(key, Kind.REMOVED, removed(row), list));
            } else if (!namedLots.contains(lot(key)) && reach.contains(scope(row)) && isThere(row)) {
                Map<String, String> cells = new HashMap<>(row.cells());
                String before = cells.put(AVAILABLE, "0");
                left.add(new MergedRow(row.place(), cells, Map.of(), new Faults()));
                changes.add(new Change(key, Kind.SOLD_OUT, List.of(new Edit(AVAILABLE, before, "0")), list));
            } else {
                left.add(row);
            }
        }
        return new TableMerge(left, changes, merge.unchanged());
    }

    private List<String> scope(MergedRow row) {
        return scope(row.cells().getOrDefault("lot", ""), row.cells().getOrDefault("supplier", ""));
    }

    private static boolean isThere(MergedRow row) {
        return !CellEquality.same(TABLE, AVAILABLE, row.cells().getOrDefault(AVAILABLE, ""), "0");
    }

    private static List<Edit> removed(MergedRow row) {
        return TABLE.order().stream().filter(row.cells()::containsKey).map(column -> new Edit(column, row.cells().get(column), ""))
                .toList();
    }
}
