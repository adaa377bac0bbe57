package sledwright.catalog;

import java.util.Optional;
import sledwright.domain.Catalog;

/** An offer that asks less of the customer than the shop paid. */
public final class BelowCost {

    private BelowCost() {
    }

    /** What is to be said of an offer; empty where nothing of it is sold, its cost is not known, or it is sold at its cost or above. */
    public static Optional<String> of(OfferRow offer, Catalog catalog) {
        boolean sold = offer.stock().units() > 0 && !offer.isOver(catalog.pricedOn());
        if (!sold || offer.price().unitCost().isEmpty() || offer.price().unitPrice() >= offer.price().unitCost().getAsLong()) {
            return Optional.empty();
        }
        return Optional.of("lot %s sells %s at %s %s, below its cost of %s.".formatted(offer.lot(), offer.sku(),
                catalog.amount(offer.price().unitPrice()), catalog.currency(), catalog.amount(offer.price().unitCost().getAsLong())));
    }
}
