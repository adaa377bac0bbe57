package sledwright.catalog;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalLong;
import sledwright.domain.Condition;

/**
 * A row of {@code offers.csv}; money in minor units.
 *
 * @param validUntil the last day on which the lot is sold; empty: it does not run out
 */
public record OfferRow(String sku, String lot, String supplier, Condition condition, long unitPrice, int minQuantity, int available,
                int leadDays, OptionalLong unitCost, Optional<LocalDate> validUntil) {

    /** The same offer of a supplier by another name. */
    OfferRow withSupplier(String name) {
        return new OfferRow(sku, lot, name, condition, unitPrice, minQuantity, available, leadDays, unitCost, validUntil);
    }

    /** Whether the lot is no longer sold on that day. */
    public boolean isOver(LocalDate day) {
        return validUntil.filter(last -> last.isBefore(day)).isPresent();
    }
}
