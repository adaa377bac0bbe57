package sledwright.planner.order;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sledwright.domain.Build;
import sledwright.domain.FilledEnclosure;
import sledwright.domain.Lot;
import sledwright.domain.LotPiles;
import sledwright.domain.OrderLine;
import sledwright.domain.Pick;
import sledwright.metrics.Figures;
import sledwright.metrics.OrderPrice;
import sledwright.planner.order.OrderOutcome.Fill;
import sledwright.planner.order.OrderOutcome.LineFill;
import sledwright.planner.order.OrderOutcome.Price;
import sledwright.planner.order.fill.Packing;
import sledwright.planner.order.fill.Tally;
import sledwright.planner.order.market.Bay;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.Market;

/** Puts a finished tally into machines: which machine takes which units of which lot, and which sled stands where. */
final class Assembly {

    private final Market market;
    private final Tally tally;
    private final Map<Lot, Integer> taken = new LinkedHashMap<>();
    /** Pool -> what its lines take. */
    private final Map<Integer, LotPiles> piles = new HashMap<>();

    Assembly(Tally tally) {
        this.tally = tally;
        market = tally.market();
        for (int part = 0; part < market.parts(); part++) {
            if (tally.takes(part)) {
                tally.draws().picks(part, tally.need()).forEach((pool, picks) -> {
                    picks.forEach(pick -> taken.merge(pick.lot(), pick.quantity(), Integer::sum));
                    piles.computeIfAbsent(pool, some -> new LotPiles(List.of())).put(picks);
                });
            }
        }
    }

    /** Units by lot over the whole order. */
    List<Pick> picks() {
        return taken.entrySet().stream().map(entry -> new Pick(entry.getKey(), entry.getValue())).toList();
    }

    List<FilledEnclosure> enclosures() {
        List<FilledEnclosure> enclosures = new ArrayList<>();
        for (Bay bay : market.bays()) {
            List<Build> sleds = tally.counts().entrySet().stream().filter(entry -> bay.equals(entry.getKey().bay()))
                    .flatMap(entry -> Collections.nCopies(entry.getValue(), entry.getKey().builds()).stream().flatMap(List::stream))
                    .toList();
            if (!sleds.isEmpty()) {
                Packing.pack(tally.loads(bay), bay).forEach(packed -> {
                    enclosures.add(new FilledEnclosure(bay.enclosure(), bay.supply(), packed.stream().map(sleds::get).toList()));
                });
            }
        }
        return enclosures;
    }

    List<LineFill> lines() {
        List<LineFill> lines = new ArrayList<>();
        for (int line = 0; line < market.lines().size(); line++) {
            int asked = line;
            Map<Build, List<List<Pick>>> byBuild = new LinkedHashMap<>();
            tally.counts().entrySet().stream().filter(entry -> entry.getKey().line() == asked)
                    .sorted(Comparator.comparing((Map.Entry<Column, Integer> entry) -> entry.getValue()).reversed())
                    .forEach(entry -> {
                        for (int time = 0; time < entry.getValue(); time++) {
                            entry.getKey().builds()
                                    .forEach(build -> byBuild.computeIfAbsent(build, same -> new ArrayList<>())
                                            .add(piles.get(market.poolOf(asked)).taken(build.partCounts())));
                        }
                    });
            OrderLine of = market.line(line);
            lines.add(new LineFill(of, byBuild.entrySet().stream().map(entry -> new Fill(entry.getKey(),
                            Figures.of(entry.getKey(), of.request(), market.catalog().throughputFactors()), entry.getValue())).toList(),
                    tally.missing(line)));
        }
        return lines;
    }

    Price price(List<LineFill> lines, int suppliers) {
        long labour = 0;
        long licence = 0;
        for (LineFill line : lines) {
            for (Fill fill : line.fills()) {
                OrderPrice beside = OrderPrice.of(List.of(fill.build()), List.of(), market.catalog().labour(),
                        line.line().request().licence());
                labour += beside.labour() * fill.machines();
                licence += beside.licence() * fill.machines();
            }
        }
        return new Price(picks().stream().mapToLong(Pick::total).sum(), labour, licence, market.order().deliveryCharge() * suppliers);
    }
}
