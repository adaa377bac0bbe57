package sledwright.explain.price;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import sledwright.domain.Catalog;
import sledwright.domain.Request;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;

/**
 * The most that a unit of a part may cost before a request is better met without it.
 *
 * <p>Asked for many requests, the answer to one is where the next begins: most then need a single search, which the limit of the price cuts
 * short.
 */
public final class HighestPrice {

    private final Catalog catalog;
    private final Search search;
    private final Deadline deadline;
    private final Map<Request, Findings> known = new HashMap<>();

    /** @param search of the catalogue; its caches serve on */
    public HighestPrice(Catalog catalog, Search search, Deadline deadline) {
        this.catalog = catalog;
        this.search = search;
        this.deadline = deadline;
    }

    /**
     * What an order with the part may cost: no more than the cheapest without it, nor than a ceiling; minor units.
     *
     * @param request asks for the cheapest, without a limit of the price
     * @param ceiling what all machines may cost together
     * @return empty when time ran out
     */
    public OptionalLong level(String sku, Request request, long ceiling) {
        Findings best = known.computeIfAbsent(request, asked -> search.run(asked.withAlternatives(1, asked.step()), deadline));
        if (best.status() == Status.PROVED && best.ranked().get(0).needed().containsKey(sku)) {
            Set<String> forbid = new HashSet<>(request.forbid());
            forbid.add(sku);
            best = search.run(request.withForbid(forbid).withAlternatives(1, request.step()), deadline);
        }
        return switch (best.status()) {
            case PROVED -> OptionalLong.of(Math.min(ceiling, best.ranked().get(0).price().total()));
            case BEST_FOUND -> OptionalLong.empty();
            case IMPOSSIBLE -> OptionalLong.of(ceiling);
        };
    }

    /**
     * The greatest unit price in minor units at which some order with the part costs no more than a level.
     *
     * @param known a price that is not of interest unless it is exceeded; -1: any is
     * @return the price, or {@code known} where it is no greater, or time ran out
     */
    public long beyond(long known, String sku, Request request, long level) {
        Request within = request.withAlternatives(1, request.step())
                .withLimit(request.limit().withPrice(OptionalLong.of(level)));
        long good = known;
        while (true) {
            long price = good + 1;
            Findings found = search.on(catalog.withPrice(sku, price)).runHolding(sku, within, deadline);
            if (found.status() != Status.PROVED) {
                return good;
            }
            // The same order costs more by a line that is known; only another can stay below the level beyond its end.
            int units = BreakEven.bought(found.ranked().get(0), sku);
            good = price + (level - found.ranked().get(0).price().total()) / units;
        }
    }
}
