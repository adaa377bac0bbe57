package sledwright.explain.audit;

import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Function;
import sledwright.catalog.OfferRow;
import sledwright.domain.Catalog;

/** A lot whose last day is before the day of the prices; it is not sold. */
final class LotsOver implements OfferCheck {

    @Override
    public Function<OfferRow, Optional<String>> messages(Catalog catalog) {
        LocalDate day = catalog.pricedOn();
        return offer -> offer.stock().lastDay().filter(until -> offer.isOver(day)).map(until ->
                "lot %s of %s was valid until %s and is not sold on %s.".formatted(offer.lot(), offer.sku(), until, day));
    }
}
