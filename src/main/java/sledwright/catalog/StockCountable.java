package sledwright.catalog;

import java.math.BigInteger;
import sledwright.input.Faults;
import sledwright.input.Located;

/**
 * All units of all lots at their prices come to an amount that stays exact, also in a double, so that no order of them is rounded or wraps.
 */
final class StockCountable implements CatalogCheck {

    @Override
    public void check(RawCatalog raw, Faults faults) {
        BigInteger worth = BigInteger.ZERO;
        for (Located<OfferRow> row : raw.offers().rows()) {
            BigInteger more = worth.add(BigInteger.valueOf(row.value().price().unitPrice())
                    .multiply(BigInteger.valueOf(row.value().stock().units())));
            if (more.compareTo(CatalogBounds.COUNTABLE) > 0) {
                faults.add(row.place(), "up to here the stock comes to more than can be counted; lower available or unit_price");
            } else {
                worth = more;
            }
        }
    }
}
