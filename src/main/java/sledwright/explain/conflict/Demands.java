package sledwright.explain.conflict;

import java.util.List;
import java.util.stream.Stream;
import sledwright.domain.Catalog;
import sledwright.domain.Request;
import sledwright.explain.ask.WhatIf;

/** Everything of a request and its circumstances that could be otherwise. */
public final class Demands {

    private Demands() {
    }

    /** In the order in which they are best given way to: figures first, the price, which follows from all else, last. */
    public static List<Demand> of(WhatIf asked, Catalog catalog) {
        Request request = asked.request();
        return Stream.of(
                FigureDemands.of(request.require()),
                EquipmentDemands.of(asked, catalog),
                ChoiceDemands.machines(request.machines()),
                ChoiceDemands.processors(request.require().processors()),
                LimitDemands.of(request.limit()),
                choices(asked),
                StockDemand.of(),
                LimitDemands.price(request.limit(), catalog)).flatMap(demands -> demands).toList();
    }

    /** What a customer could do without, or a shop give up, that is neither a figure nor a circumstance, such as stock or a site. */
    public static List<Demand> wishes(WhatIf asked) {
        Request request = asked.request();
        return Stream.of(
                EquipmentDemands.extras(asked),
                ChoiceDemands.processors(request.require().processors()),
                LimitDemands.wished(request.limit()),
                choices(asked)).flatMap(demands -> demands).toList();
    }

    private static Stream<Demand> choices(WhatIf asked) {
        Request request = asked.request();
        return Stream.of(
                ChoiceDemands.populated(request.require().populated()),
                ChoiceDemands.mode(request.require().mode()),
                ChoiceDemands.platforms(request.platforms()),
                ChoiceDemands.forbidden(request.forbid()),
                ChoiceDemands.used(request.use()).filter(demand -> !demand.sku().equals(asked.held()))).flatMap(demands -> demands);
    }
}
