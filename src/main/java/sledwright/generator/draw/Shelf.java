package sledwright.generator.draw;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.domain.Request;
import sledwright.domain.Stock;
import sledwright.generator.keep.Content;
import sledwright.metrics.CheapestDraw;
import sledwright.rules.Rulebook;
import sledwright.rules.choice.ForbiddenPart;

/** The lots that a request may draw on, and what units of a part cost there; threads may share it. */
public final class Shelf {

    private static final int MOST_IN_TABLES = 128;

    private record Units(String sku, int count) {
    }

    private final Catalog catalog;
    private final Request request;
    private final Stock stock;
    private final Map<String, List<Lot>> lots = new ConcurrentHashMap<>();
    /** What each number of units of a part costs, as far as it was asked for; of large numbers only what was asked for. */
    private final Map<String, long[]> prices = new ConcurrentHashMap<>();
    private final Map<Units, Long> ofMany = new ConcurrentHashMap<>();

    private Content fittings;

    public Shelf(Catalog catalog, Request request) {
        this.catalog = catalog;
        this.request = request;
        stock = Stock.of(catalog, request);
    }

    /** The lots of a part that the request accepts, the preferred first. */
    public List<Lot> lots(String sku) {
        return lots.computeIfAbsent(sku, key -> ForbiddenPart.allows(request, key)
                ? stock.lots(key).stream()
                        .filter(lot -> Rulebook.accepts(lot, request.limit()))
                        .filter(lot -> lot.available() > 0).toList()
                : List.of());
    }

    /** Whether the lots hold a given number of units of a part, however they sell them. */
    public boolean holds(String sku, int units) {
        return lots(sku).stream().mapToLong(Lot::available).sum() >= units;
    }

    /** The least price of units of one part, minor units; {@link CheapestDraw#IMPOSSIBLE} where there are not enough. */
    public long price(String sku, int units) {
        if (units >= MOST_IN_TABLES) {
            return ofMany.computeIfAbsent(new Units(sku, units), asked -> CheapestDraw.prices(lots(sku), units)[units]);
        }
        long[] known = prices.get(sku);
        if (known == null || known.length <= units) {
            known = CheapestDraw.prices(lots(sku), units);
            prices.put(sku, known);
        }
        return known[units];
    }

    /** All drives, cards and extras, each with the lots that the request accepts. */
    public Content fittings() {
        Content known = fittings;
        if (known == null) {
            known = new Content(Stream.of(catalog.drives(), catalog.cards(), catalog.extras()).flatMap(List::stream)
                    .<Object>map(part -> List.of(part, lots(part.sku()))).toList());
            fittings = known;
        }
        return known;
    }
}
