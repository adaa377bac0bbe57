package sledwright.catalog;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import sledwright.input.Faults;
import sledwright.input.Located;

/** The price breaks of one lot differ in quantity and price alone. */
final class LotsAgree implements CatalogCheck {

    private record LotKey(String sku, String lot) {
    }

    private record BreakKey(String sku, String lot, int minQuantity) {
    }

    @Override
    public void check(RawCatalog raw, Faults faults) {
        Map<LotKey, Located<OfferRow>> lots = new HashMap<>();
        Map<BreakKey, Located<OfferRow>> breaks = new HashMap<>();
        for (Located<OfferRow> row : raw.offers().rows()) {
            OfferRow offer = row.value();
            Located<OfferRow> same = breaks.putIfAbsent(new BreakKey(offer.sku(), offer.lot(), offer.price().minQuantity()), row);
            if (same != null) {
                faults.add(row.place(), "lot \"%s\" of %s has min_quantity %s twice, first at %s".formatted(
                        offer.lot(), offer.sku(), offer.price().minQuantity(), same.place().seenFrom(row.place())));
            }
            Located<OfferRow> first = lots.putIfAbsent(new LotKey(offer.sku(), offer.lot()), row);
            if (first != null) {
                agree("available", first.value().stock().units(), offer.stock().units(), first, row, faults);
                agree("supplier", first.value().supplier(), offer.supplier(), first, row, faults);
                agree("condition", first.value().condition(), offer.condition(), first, row, faults);
                agree("valid_until", day(first.value()), day(offer), first, row, faults);
                agree("lead_days", first.value().stock().leadDays(), offer.stock().leadDays(), first, row, faults);
            }
        }
    }

    private static String day(OfferRow offer) {
        return offer.stock().lastDay().map(LocalDate::toString).orElse("empty");
    }

    private static void agree(String column, Object first, Object next, Located<OfferRow> firstRow, Located<OfferRow> row, Faults faults) {
        if (!Objects.equals(first, next)) {
            faults.add(row.place(), "%s \"%s\" must be %s, as at %s: both are price breaks of lot %s".formatted(column, next,
                    first, firstRow.place().seenFrom(row.place()), row.value().lot()));
        }
    }
}
