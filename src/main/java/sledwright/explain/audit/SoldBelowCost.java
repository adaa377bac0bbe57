package sledwright.explain.audit;

import java.util.Optional;
import java.util.function.Function;
import sledwright.catalog.BelowCost;
import sledwright.catalog.OfferRow;
import sledwright.domain.Catalog;

/** A price, or price break, below what the shop paid. */
final class SoldBelowCost implements OfferCheck {

    @Override
    public Function<OfferRow, Optional<String>> messages(Catalog catalog) {
        return offer -> BelowCost.of(offer, catalog);
    }
}
