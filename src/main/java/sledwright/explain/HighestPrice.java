package sledwright.explain;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.domain.Request;
import sledwright.generator.Deadline;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;

/** The most that a unit of a part may cost before a request is better met without it. */
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
     * The greatest unit price in minor units at which the cheapest order with the part costs no more than the cheapest without it, nor
     * than a ceiling; empty where not even a free one would do, or time ran out.
     *
     * @param request asks for the cheapest, without a limit of the price
     * @param ceiling what all machines may cost together, minor units; empty: any amount
     */
    public OptionalLong of(String sku, Request request, OptionalLong ceiling) {
        Request one = request.withAlternatives(1, request.step());
        OptionalDouble without = without(sku, one);
        double level = Math.min(without.orElse(Double.POSITIVE_INFINITY), ceiling.isPresent() ? ceiling.getAsLong() : Double.POSITIVE_INFINITY);
        if (Double.isNaN(level) || Double.isInfinite(level)) {
            return OptionalLong.empty();
        }
        Catalog free = catalog.withEachLot(lot -> !lot.sku().equals(sku) ? lot
                : lot.with(lot.available(), List.of(new Lot.PriceBreak(lot.minQuantity(), 0, OptionalLong.empty()))));
        Findings given = search.on(free).run(WhyNotAnswer.with(one, sku), deadline);
        if (given.status() != Status.PROVED || given.best() > level) {
            return OptionalLong.empty();
        }
        try {
            return new BreakEven(sku, new Findings(one, Status.PROVED, level, level, List.of(), true), catalog, search, deadline).find()
                    .map(BreakEven.Found::unitPrice).orElse(OptionalLong.empty());
        } catch (UnsettledException late) {
            return OptionalLong.empty();
        }
    }

    /** What the cheapest order without the part costs; empty where there is none, NaN where time ran out. */
    private OptionalDouble without(String sku, Request one) {
        Findings best = known.computeIfAbsent(one, asked -> search.run(asked, deadline));
        if (best.status() == Status.PROVED && best.ranked().get(0).needed().containsKey(sku)) {
            Set<String> forbid = new HashSet<>(one.forbid());
            forbid.add(sku);
            best = search.run(one.withForbid(forbid), deadline);
        }
        return switch (best.status()) {
            case PROVED -> OptionalDouble.of(best.best());
            case BEST_FOUND -> OptionalDouble.of(Double.NaN);
            case IMPOSSIBLE -> OptionalDouble.empty();
        };
    }
}
