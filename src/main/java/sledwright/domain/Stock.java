package sledwright.domain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** What can be drawn on for a request: the shop's lots and the customer's own parts. */
public final class Stock {

    /** Own parts first, then what is here soonest; of equals the catalogue's order. */
    private static final Comparator<Lot> PREFERENCE =
            Comparator.comparing((Lot lot) -> !lot.onHand()).thenComparingInt(Lot::leadDays);

    private final Catalog catalog;
    private final Map<String, Integer> onHand;

    private Stock(Catalog catalog, Map<String, Integer> onHand) {
        this.catalog = catalog;
        this.onHand = onHand;
    }

    /** The stock behind a request. */
    public static Stock of(Catalog catalog, Request request) {
        return new Stock(catalog, request.onHand());
    }

    /** All lots of a part, the preferred first. */
    public List<Lot> lots(String sku) {
        int own = onHand.getOrDefault(sku, 0);
        List<Lot> lots = new ArrayList<>(catalog.lots(sku));
        if (own > 0) {
            lots.add(Lot.onHand(sku, own));
        }
        lots.sort(PREFERENCE);
        return lots;
    }
}
