package sledwright.catalog;

import java.util.Currency;
import java.util.List;
import java.util.OptionalLong;
import sledwright.domain.Availability;
import sledwright.domain.Condition;
import sledwright.domain.Lot;
import sledwright.domain.Lot.PriceBreak;
import sledwright.input.CsvReader.Columns;
import sledwright.input.Faults;
import sledwright.input.Fields;
import sledwright.input.Vocabulary;

/** Reads {@code offers.csv}. */
final class OfferTable {

    static final Columns COLUMNS = new Columns(List.of("sku", "lot", "supplier", "condition", "unit_price", "min_quantity", "available",
            "lead_days", "unit_cost", "valid_until"), List.of("min_quantity", "lead_days", "unit_cost", "valid_until"));
    private static final Vocabulary<Condition> CONDITIONS = Vocabulary.ofAnyCase(List.of(Condition.values()), Condition::label);

    private OfferTable() {
    }

    static Table<OfferRow> read(TableRows rows, Currency currency, Faults faults) {
        return TableReader.read(rows, row -> offer(row, currency), faults);
    }

    private static OfferRow offer(Fields row, Currency currency) {
        Faults faults = row.faults();
        if (Lot.OWN.contains(row.text("lot", ""))) {
            row.field("lot").ifPresent(field -> field.fault("is the name of the customer's own parts; give the lot another", faults));
        }
        String sku = row.sku("sku");
        String lot = row.text("lot");
        String supplier = row.text("supplier");
        Condition condition = row.word("condition", CONDITIONS).orElse(null);
        long unitPrice = row.required("unit_price").map(field -> Money.minor(field, CatalogBounds.MONEY, currency, faults).orElse(0))
                .orElse(0L);
        int minQuantity = row.wholeIfAny("min_quantity", CatalogBounds.MIN_QUANTITY).orElse(1);
        int available = row.whole("available", CatalogBounds.AVAILABLE);
        int leadDays = row.wholeIfAny("lead_days", CatalogBounds.LEAD_DAYS).orElse(0);
        OptionalLong unitCost = row.field("unit_cost").map(field -> Money.minor(field, CatalogBounds.MONEY, currency, faults))
                .orElse(OptionalLong.empty());
        return new OfferRow(sku, lot, supplier, condition, new PriceBreak(minQuantity, unitPrice, unitCost),
                new Availability(available, leadDays, row.field("valid_until").flatMap(field -> field.date(faults))));
    }
}
