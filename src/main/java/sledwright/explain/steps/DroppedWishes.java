package sledwright.explain.steps;

import java.util.List;
import java.util.Optional;
import sledwright.domain.Request;
import sledwright.explain.ask.Oracle;
import sledwright.explain.ask.WhatIf;
import sledwright.explain.conflict.Demand;
import sledwright.explain.conflict.Demands;
import sledwright.explain.steps.Steps.Dropped;
import sledwright.rules.Order;

/** What a request would have without each of its wishes. */
public final class DroppedWishes {

    private DroppedWishes() {
    }

    /**
     * Adds each wish without which the best is better.
     *
     * @param best the proved best order of the request
     * @throws sledwright.explain.ask.UnsettledException when time runs out; those that were found are there
     */
    public static void addTo(List<Dropped> dropped, Request request, Order best, Oracle oracle) {
        WhatIf asked = WhatIf.of(request, Optional.empty());
        Standing own = Standing.of(best, request);
        for (Demand wish : Demands.wishes(asked)) {
            oracle.best(wish.without().apply(asked), request.objective()).map(order -> Standing.of(order, request))
                    .filter(other -> other.precedes(own)).ifPresent(other -> dropped.add(new Dropped(wish.key(), wish.sku(), wish.words(),
                            other.measured(oracle.catalog()), other.above(own, oracle.catalog()), oracle.catalog().amount(other.price()))));
        }
    }
}
