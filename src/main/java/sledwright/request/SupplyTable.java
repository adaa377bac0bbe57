package sledwright.request;

import java.math.BigInteger;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import sledwright.catalog.CatalogBounds;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.SupplierNames;
import sledwright.domain.SupplyOffer;
import sledwright.input.CsvReader;
import sledwright.input.CsvReader.Columns;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Fields;
import sledwright.input.Place;
import sledwright.input.Section;
import sledwright.input.Source;
import sledwright.input.Vocabulary;

/** What suppliers would sell to the shop: the rows of {@code supply.csv}, or the same listed in a request. */
public final class SupplyTable {

    static final Columns COLUMNS = new Columns(List.of("sku", "supplier", "unit_cost", "available",
            "min_quantity", "lead_days", "condition"), List.of("min_quantity", "lead_days", "condition"));

    private static final Vocabulary<Condition> CONDITIONS = Vocabulary.ofAnyCase(List.of(Condition.values()), Condition::label);

    /**
     * A row before it is held against a catalogue; its sku and cost are still as written.
     *
     * @param offer all else
     */
    private record Draft(Optional<Field> sku, Optional<Field> unitCost, Place place, SupplyOffer offer) {

        String supplier() {
            return offer.supplier();
        }
    }

    private final List<Draft> drafts;

    private SupplyTable(List<Draft> drafts) {
        this.drafts = drafts;
    }

    /** What is wrong in a table of what suppliers offer, before anybody holds it against a catalogue. */
    public static void requireSound(Path table) {
        Faults faults = new Faults();
        read(Source.of(table), faults);
        faults.throwIfAny();
    }

    static SupplyTable read(Source table, Faults faults) {
        return sound(CsvReader.read(table, COLUMNS, faults).rows().stream().map(SupplyTable::draft).toList(), faults);
    }

    /**
     * Offers that a request lists itself, under the names of the columns.
     *
     * @param place where the list stands
     */
    static SupplyTable of(List<Section> rows, Place place, Faults faults) {
        if (rows.isEmpty()) {
            faults.add(place, "supply must list at least one offer, or name a table of them");
        }
        List<Draft> drafts = rows.stream().map(SupplyTable::draft).toList();
        rows.forEach(Section::finish);
        return sound(drafts, faults);
    }

    private static SupplyTable sound(List<Draft> drafts, Faults faults) {
        SupplyTable table = new SupplyTable(drafts);
        table.requireOnce(Draft::supplier, faults);
        return table;
    }

    private static Draft draft(Fields row) {
        Optional<Field> sku = row.required("sku");
        sku.ifPresent(field -> field.sku(row.faults()));
        Optional<Field> unitCost = row.required("unit_cost");
        int available = row.whole("available", CatalogBounds.AVAILABLE);
        int least = row.wholeIfAny("min_quantity", CatalogBounds.MIN_QUANTITY).orElse(1);
        if (row.has("available") && row.has("min_quantity") && available > 0 && least > available) {
            row.field("min_quantity")
                    .ifPresent(field -> field.fault("is more than the %s that are available".formatted(available), row.faults()));
        }
        String supplier = row.text("supplier");
        int leadDays = row.wholeIfAny("lead_days", CatalogBounds.LEAD_DAYS).orElse(0);
        Condition condition = row.wordIfAny("condition", CONDITIONS).orElse(Condition.NEW);
        return new Draft(sku, unitCost, row.place(), new SupplyOffer("", supplier, condition, 0, available, least, leadDays));
    }

    private void requireOnce(Function<Draft, String> supplier, Faults faults) {
        Map<List<Object>, Place> seen = new HashMap<>();
        for (Draft draft : drafts) {
            if (draft.sku().isPresent()) {
                Place earlier = seen.putIfAbsent(List.of(draft.sku().get().text(), supplier.apply(draft), draft.offer().condition()),
                        draft.place());
                if (earlier != null) {
                    draft.sku().get().fault("is offered twice by \"%s\" in that condition, first at line %s"
                            .formatted(Field.shown(supplier.apply(draft)), earlier.line()), faults);
                }
            }
        }
    }

    /** The offers in the catalogue's currency; what is unknown there, or too much to count, goes to {@code faults}. */
    List<SupplyOffer> resolve(Catalog catalog, Resolver find, Faults faults) {
        SupplierNames suppliers = catalog.suppliers();
        if (drafts.stream().anyMatch(draft -> !suppliers.resolved(draft.supplier()).equals(draft.supplier()))) {
            requireOnce(draft -> suppliers.resolved(draft.supplier()), faults);
        }
        List<SupplyOffer> offers = new ArrayList<>();
        BigInteger worth = BigInteger.ZERO;
        for (Draft draft : drafts) {
            OptionalLong cost = draft.unitCost().map(field -> find.amount(field, CatalogBounds.MONEY)).orElse(OptionalLong.empty());
            BigInteger before = worth;
            worth = worth.add(BigInteger.valueOf(cost.orElse(0)).multiply(BigInteger.valueOf(draft.offer().available())));
            if (worth.compareTo(CatalogBounds.COUNTABLE) > 0 && before.compareTo(CatalogBounds.COUNTABLE) <= 0) {
                draft.unitCost().ifPresent(field ->
                        field.fault("up to here the supply comes to more than can be counted; lower available or unit_cost",
                        faults));
            }
            boolean known = draft.sku().flatMap(find::part).isPresent();
            if (known && cost.isPresent()) {
                SupplyOffer as = draft.offer();
                offers.add(new SupplyOffer(draft.sku().orElseThrow().text(), suppliers.resolved(as.supplier()), as.condition(),
                        cost.getAsLong(), as.available(), as.minQuantity(), as.leadDays()));
            }
        }
        return offers;
    }
}
