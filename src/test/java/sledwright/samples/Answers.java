package sledwright.samples;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.CoolingKit;
import sledwright.domain.Equipment;
import sledwright.domain.Goal;
import sledwright.domain.Labour;
import sledwright.domain.Licence;
import sledwright.domain.MemoryModule;
import sledwright.domain.Objective;
import sledwright.domain.PartChoice;
import sledwright.domain.Pick;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Shortlist;
import sledwright.domain.Stock;
import sledwright.domain.Worth;
import sledwright.generator.Doubts;
import sledwright.generator.Findings;
import sledwright.generator.Status;
import sledwright.planner.Judge;
import sledwright.planner.Outcome;
import sledwright.metrics.CheapestDraw;
import sledwright.rules.Order;

/** Answers put together by hand from a small shop. */
public final class Answers {

    public static final CoolingKit DEEP = new CoolingKit("DEEP", "deep heat sink", 150, List.of("1D3", "2D3"));
    public static final Platform BOX = Samples.platform().cooling(Samples.LOW, DEEP).make();
    public static final Platform SLED = Samples.platform().sku("SLED").supplies().budgetW(400).make();
    public static final Processor COOL = Samples.P10;
    public static final Processor HOT = Samples.processor("P12").cores(12).tdpW(120).noThroughput().make();
    public static final MemoryModule R16 = Samples.R16;
    /** Alike to R16, half a watt heavier. */
    public static final MemoryModule R16B = Samples.module("R16B", 16).powerW(4.5).make();
    public static final MemoryModule R32 = Samples.R32;

    public static final Catalog SHOP = Samples.catalog(new Labour(3000, 50), List.of(BOX, SLED), List.of(COOL, HOT), List.of(R16, R16B, R32),
            Samples.lot("BOX", "B1", 3, 20000), Samples.lot("SLED", "S1", 1, 15000), Samples.lot("P10", "C1", 8, 5000),
            Samples.lot("P12", "C2", 4, 4, Condition.USED, Map.of(1, 9000L)),
            Samples.lot("LOW", "H1", 9, 1000), Samples.lot("DEEP", "H2", 9, 1500), Samples.lot("PAIR", "W1", 9, 4000),
            Samples.lot("R16", "M1", 12, 2, Condition.REFURBISHED, Map.of(1, 2150L, 8, 2000L)), Samples.lot("R16B", "M2", 20, 2100),
            Samples.lot("R32", "M3", 8, 5000));

    public static final Request ASKED = Request.named("render node")
            .withRequire(Samples.require().cores(20).memoryGb(128).bandwidthGbs(120).make())
            .withLimit(Samples.limit().powerW(420).leadDays(5).price(120000).make());

    private Answers() {
    }

    /** Two ten-core processors under the low kit, eight modules of 16 GB. */
    public static Build cool() {
        return Samples.machine(BOX).cooling(Samples.LOW).channels(4, R16).build();
    }

    /** The same with modules that are alike and heavier. */
    public static Build coolHeavier() {
        return Samples.machine(BOX).cooling(Samples.LOW).channels(4, R16B).build();
    }

    /** Two twelve-core processors under the deep kit, sixteen modules of 16 GB of two part numbers. */
    public static Build hot() {
        return Samples.machine(BOX).processors(2, HOT).cooling(DEEP).channels(3, R16, R16).channel(0, 3, R16B, R16B)
                .channel(1, 3, R16B, R16B).build();
    }

    /** One ten-core processor on the sled, whose enclosure feeds it; four modules of 32 GB. */
    public static Build sled() {
        return Samples.machine(SLED).processors(1, COOL).noSupply().channels(4, R32).build();
    }

    /** The machines with their parts drawn from the shop. */
    public static Order order(Request request, Build... machines) {
        Stock stock = Stock.of(SHOP, request);
        List<Pick> picks = new ArrayList<>();
        Order.of(List.of(machines), List.of(), request, SHOP).needed()
                .forEach((sku, units) -> picks.addAll(CheapestDraw.picks(stock.lots(sku), units)));
        return Order.of(List.of(machines), picks, request, SHOP);
    }

    /** Two ranked builds on one platform; the second has an estimated throughput. */
    public static Findings proved() {
        return findings(ASKED, Status.PROVED, order(ASKED, cool()), order(ASKED, hot()));
    }

    /** Findings whose best is their price and whose bound is equal. */
    public static Findings findings(Request request, Status status, Order... ranked) {
        double best = ranked.length == 0 ? Double.NaN : ranked[0].price().total();
        return new Findings(request, status, best, best, List.of(ranked), status == Status.BEST_FOUND ? Doubts.of(Doubts.Cause.TIME) : Doubts.NONE);
    }

    /** Three machines, one of them of heavier modules. */
    public static Findings unequal() {
        Request request = ASKED.withMachines(3).withLimit(Samples.limit().make());
        return findings(request, Status.PROVED, order(request, cool(), coolHeavier(), coolHeavier()));
    }

    /** A request with everything that changes a text: a licence, own parts, an objective that is not money. */
    public static Request rich() {
        return new Request("=cmd()", 1, ASKED.require(), Samples.limit().make(), new Goal(Objective.MOST_THROUGHPUT, Worth.NOTHING, new Licence(1000, 2500)),
                Shortlist.PLAIN, new PartChoice(Set.of(), Set.of(), Set.of(), Map.of("R16", 4), Equipment.NONE));
    }

    /** The findings as the planner hands them on, whether or not they keep every rule. */
    public static Outcome outcome(Findings findings) {
        Judge judge = new Judge();
        return new Outcome(findings.request(), findings.status(), findings.best(), findings.bound(),
                findings.ranked().stream().map(judge::judge).toList(), findings.doubts());
    }
}
