package sledwright.restock;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.DemandClass;
import sledwright.domain.Lot;
import sledwright.domain.OrdersByMonth;
import sledwright.domain.PartKind;
import sledwright.domain.Request;
import sledwright.domain.RestockRequest;
import sledwright.domain.SupplyOffer;
import sledwright.generator.time.Deadline;
import sledwright.samples.Samples;

/** A shop with plenty of everything but boxes and modules of 16 and 32 GB, which must be bought. */
final class SmallShop {

    static final Catalog CATALOG = Samples.catalog(List.of(Samples.platform().sku("BOX").make()), List.of(Samples.P10), List.of(Samples.R16, Samples.R32),
            Samples.lot("P10", "C1", 100_000, 5000), Samples.lot("LOW", "H1", 100_000, 1000), Samples.lot("PAIR", "W1", 100_000, 4000));

    private SmallShop() {
    }

    static SupplyOffer offer(String sku, long cost, int available, int least, int leadDays) {
        return new SupplyOffer(sku, "Quarry", Condition.USED, cost, available, least, leadDays);
    }

    static DemandClass asking(String name, OrdersByMonth orders, double memoryGb, long margin, long loss) {
        return new DemandClass(name, Request.named(name).withRequire(Samples.require().cores(10).memoryGb(memoryGb).make()), orders,
                OptionalLong.of(margin), OptionalLong.empty(), loss);
    }

    static RestockRequest request(List<DemandClass> classes, OptionalLong budget, double lostAMonth, int samples, SupplyOffer... offers) {
        Map<PartKind, Double> lost = new EnumMap<>(PartKind.class);
        lost.put(PartKind.PLATFORMS, lostAMonth);
        lost.put(PartKind.MEMORY, lostAMonth);
        return new RestockRequest("small", classes, 1, new RestockRequest.Purchases(budget, List.of(offers)), lost, 0.95, samples);
    }

    static RestockPlan plan(RestockRequest request) {
        return Restocker.plan(CATALOG, request, 0, Deadline.never(), line -> { });
    }

    /** A shop that has modules, too. */
    static Catalog with(Lot... lots) {
        Map<String, List<Lot>> all = new java.util.TreeMap<>(CATALOG.lots());
        for (Lot lot : lots) {
            all.computeIfAbsent(lot.sku(), sku -> new ArrayList<>()).add(lot);
        }
        return CATALOG.withLots(all);
    }
}
