package sledwright.catalog;

import java.time.LocalDate;
import sledwright.domain.Availability;
import sledwright.domain.Condition;
import sledwright.domain.Lot.PriceBreak;

/** A row of {@code offers.csv}: a lot at one of its prices. */
public record OfferRow(String sku, String lot, String supplier, Condition condition, PriceBreak price, Availability stock) {

    /** The same offer of a supplier by another name. */
    OfferRow withSupplier(String name) {
        return new OfferRow(sku, lot, name, condition, price, stock);
    }

    /** Whether the lot is no longer sold on that day. */
    public boolean isOver(LocalDate day) {
        return stock.lastDay().filter(last -> last.isBefore(day)).isPresent();
    }
}
