package sledwright.explain.audit;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import sledwright.catalog.OfferRow;
import sledwright.catalog.PlacedCatalog;
import sledwright.domain.Part;
import sledwright.input.Located;

/** Stock of a part that no machine can hold; a lot is named once. */
final class OffersOfUnusableParts implements Audit.Check {

    @Override
    public String id() {
        return "unusable-offer";
    }

    @Override
    public List<Warning> look(PlacedCatalog placed) {
        Set<String> unusable = Usable.nowhere(placed.catalog()).stream().map(Part::sku).collect(Collectors.toSet());
        List<Warning> warnings = new ArrayList<>();
        Set<List<String>> seen = new HashSet<>();
        for (Located<OfferRow> row : placed.offers()) {
            OfferRow offer = row.value();
            if (unusable.contains(offer.sku()) && offer.available() > 0 && seen.add(List.of(offer.sku(), offer.lot()))) {
                warnings.add(new Warning(id(), row.place(),
                        "lot %s offers %s of %s, which no platform takes.".formatted(offer.lot(), offer.available(),
                        offer.sku())));
            }
        }
        return warnings;
    }
}
