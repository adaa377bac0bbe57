package sledwright.catalog;

import java.math.BigInteger;
import sledwright.input.Faults;
import sledwright.input.Located;

/** All units of all lots at their prices come to an amount that whole minor units can hold, so that no order of them overflows. */
final class StockCountable implements CatalogCheck {

    /** Half of what they hold; labour and licences have the other half. */
    private static final BigInteger MOST = BigInteger.valueOf(Long.MAX_VALUE / 2);

    @Override
    public void check(RawCatalog raw, Faults faults) {
        BigInteger worth = BigInteger.ZERO;
        for (Located<OfferRow> row : raw.offers().rows()) {
            worth = worth.add(BigInteger.valueOf(row.value().unitPrice()).multiply(BigInteger.valueOf(row.value().available())));
            if (worth.compareTo(MOST) > 0) {
                faults.add(row.place(), "up to here the stock comes to more than can be counted; lower available or unit_price");
                return;
            }
        }
    }
}
