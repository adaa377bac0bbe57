package sledwright.catalog;

import java.util.List;
import java.util.Map;
import sledwright.domain.Catalog;
import sledwright.input.Located;
import sledwright.input.Place;

/**
 * A catalogue whose parts and offers know their lines.
 *
 * @param parts  sku -> where the part first stands
 * @param offers every row of offers.csv, also of lots that are over
 */
public record PlacedCatalog(Catalog catalog, Map<String, Place> parts, List<Located<OfferRow>> offers) {

    public PlacedCatalog {
        parts = Map.copyOf(parts);
        offers = List.copyOf(offers);
    }
}
