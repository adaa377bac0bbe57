package sledwright.catalog;

import java.util.Set;
import sledwright.input.Faults;
import sledwright.input.Located;
import sledwright.input.Nearest;

/** Every offer is of a part that the catalogue describes. */
final class OffersKnown implements CatalogCheck {

    @Override
    public void check(RawCatalog raw, Faults faults) {
        if (!raw.partsWhole()) {
            return;
        }
        Set<String> skus = raw.skus();
        Nearest nearest = new Nearest(skus);
        for (Located<String> offer : raw.offers().skus()) {
            if (!skus.contains(offer.value())) {
                faults.add(offer.place(), "sku \"%s\" is no part of this catalogue%s"
                        .formatted(offer.value(), nearest.hint(offer.value())));
            }
        }
    }
}
