package sledwright.explain;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
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
        Set<String> forbid = new HashSet<>(one.forbid());
        forbid.add(sku);
        Findings without = search.run(one.withForbid(forbid), deadline);
        double level = Math.min(without.status() == Status.PROVED ? without.best() : Double.POSITIVE_INFINITY,
                ceiling.isPresent() ? ceiling.getAsLong() : Double.POSITIVE_INFINITY);
        if (without.status() == Status.BEST_FOUND || Double.isInfinite(level) || !canBeHad(sku, one)) {
            return OptionalLong.empty();
        }
        Findings best = new Findings(one, Status.PROVED, level, level, List.of(), true);
        try {
            Optional<BreakEven.Found> found = new BreakEven(sku, best, catalog, search, deadline).find();
            return found.isEmpty() ? OptionalLong.empty() : found.get().unitPrice();
        } catch (UnsettledException late) {
            return OptionalLong.empty();
        }
    }

    private boolean canBeHad(String sku, Request request) {
        Catalog free = catalog.withEachLot(lot -> !lot.sku().equals(sku) ? lot
                : lot.with(lot.available(), List.of(new Lot.PriceBreak(lot.minQuantity(), 0, OptionalLong.empty()))));
        return search.on(free).run(WhyNotAnswer.with(request, sku), deadline).status() == Status.PROVED;
    }
}
