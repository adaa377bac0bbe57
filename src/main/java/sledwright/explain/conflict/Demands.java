package sledwright.explain.conflict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import sledwright.domain.Catalog;
import sledwright.domain.MemoryMode;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.explain.ask.WhatIf;

/** Everything of a request and its circumstances that could be otherwise. */
public final class Demands {

    private Demands() {
    }

    /**
     * In the order in which they are best given way to: figures first, the price, which follows from all else, last.
     */
    public static List<Demand> of(WhatIf asked, Catalog catalog) {
        Request request = asked.request();
        List<Demand> demands = new ArrayList<>();
        Requirements require = request.require();
        FigureDemand.KEYS.keySet().stream().filter(target -> target.least(require) > 0)
                .forEach(target -> demands.add(new FigureDemand(target, target.least(require))));
        if (request.machines() > 1) {
            demands.add(new ChoiceDemands.Machines(request.machines()));
        }
        if (require.processors() > 0) {
            demands.add(new ChoiceDemands.Processors(require.processors()));
        }
        demands.addAll(LimitDemands.of(request.limit()));
        if (require.mode() != MemoryMode.INDEPENDENT) {
            demands.add(new ChoiceDemands.Mode(require.mode()));
        }
        if (!request.platforms().isEmpty()) {
            demands.add(new ChoiceDemands.Platforms(request.platforms()));
        }
        new TreeSet<>(request.forbid()).forEach(sku -> demands.add(new ChoiceDemands.Forbidden(sku, request.forbid())));
        new TreeSet<>(request.use()).stream().filter(sku -> !asked.held().equals(Optional.of(sku)))
                .forEach(sku -> demands.add(new ChoiceDemands.Used(sku, request.use())));
        demands.add(new ChoiceDemands.InTheLots());
        request.limit().price().ifPresent(most -> demands.add(new LimitDemands.Price(catalog, most)));
        return demands;
    }
}
