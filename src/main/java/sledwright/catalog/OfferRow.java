package sledwright.catalog;

import java.util.OptionalLong;
import sledwright.domain.Condition;

/** A row of {@code offers.csv}; money in minor units. */
record OfferRow(String sku, String lot, String supplier, Condition condition, long unitPrice, int minQuantity, int available,
                int leadDays, OptionalLong unitCost) {
}
