package sledwright.explain.audit;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import sledwright.catalog.OfferRow;
import sledwright.catalog.PlacedCatalog;
import sledwright.input.Located;

/** A lot whose last day is before the day of the prices; it is not sold, and named once. */
final class LotsOver implements Audit.Check {

    @Override
    public String id() {
        return "lot-over";
    }

    @Override
    public List<Warning> look(PlacedCatalog placed) {
        LocalDate day = placed.catalog().pricedOn();
        List<Warning> warnings = new ArrayList<>();
        Set<List<String>> seen = new HashSet<>();
        for (Located<OfferRow> row : placed.offers()) {
            OfferRow offer = row.value();
            if (offer.isOver(day) && seen.add(List.of(offer.sku(), offer.lot()))) {
                warnings.add(new Warning(id(), row.place(),
                        "lot %s of %s was valid until %s and is not sold on %s.".formatted(offer.lot(), offer.sku(),
                        offer.validUntil().orElseThrow(), day)));
            }
        }
        return warnings;
    }
}
