package sledwright.explain.audit;

import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import sledwright.catalog.OfferRow;
import sledwright.domain.Catalog;
import sledwright.domain.Part;

/** Stock of a part that no machine can hold. */
final class OffersOfUnusableParts implements OfferCheck {

    @Override
    public Function<OfferRow, Optional<String>> messages(Catalog catalog) {
        Set<String> unusable = Usable.nowhere(catalog).stream().map(Part::sku).collect(Collectors.toSet());
        return offer -> Optional.of(offer).filter(row -> unusable.contains(row.sku()) && row.stock().units() > 0).map(row ->
                "lot %s offers %s of %s, which no platform takes.".formatted(row.lot(), row.stock().units(), row.sku()));
    }
}
