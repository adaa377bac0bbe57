package sledwright.planner.order;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Enclosure;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Goal;
import sledwright.domain.Labour;
import sledwright.domain.Licence;
import sledwright.domain.Lot;
import sledwright.domain.Lot.PriceBreak;
import sledwright.domain.Objective;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Part;
import sledwright.domain.PartChoice;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Shortlist;
import sledwright.domain.Supply;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.metrics.PowerDraw;
import sledwright.planner.order.OrderOutcome.EnclosureLack;
import sledwright.planner.order.OrderOutcome.Lack;
import sledwright.planner.order.OrderOutcome.TooFewBays;
import sledwright.planner.order.OrderOutcome.Unfed;
import sledwright.planner.order.fill.Tally;
import sledwright.planner.order.market.Bay;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.Pool;
import sledwright.rules.Rulebook;
import sledwright.rules.choice.ForbiddenPart;
import sledwright.rules.enclosure.EnclosurePower;

/** Whether it is enclosures that an order lacks: their watts, or their bays. */
final class Sheltering {

    /** Units of price that stand for a watt where the lightest machine is looked for. */
    private static final double PER_WATT = 1e6;

    private final Catalog catalog;
    private final OrderRequest order;
    private final Search search;
    private final Deadline deadline;

    Sheltering(Catalog catalog, OrderRequest order, Search search, Deadline deadline) {
        this.catalog = catalog;
        this.order = order;
        this.search = search;
        this.deadline = deadline;
    }

    /**
     * @param filled an order from a stock that has all that is lacking
     * @param lacks  what that is
     */
    EnclosureLack of(Tally filled, List<Lack> lacks) {
        List<Unfed> unfed = IntStream.range(0, order.lines().size())
                .filter(line -> filled.missing(line) == order.lines().get(line).machines() && !deadline.isOver())
                .mapToObj(line -> unfed(order.lines().get(line))).flatMap(Optional::stream).toList();
        return new EnclosureLack(unfed, lacks.stream().anyMatch(lack -> catalog.enclosure(lack.sku()).isPresent())
                ? Optional.of(bays(filled)) : Optional.empty());
    }

    /** Sleds of the order, and the bays that are in stock for them. */
    private TooFewBays bays(Tally filled) {
        Market market = filled.market();
        int sleds = filled.counts().entrySet().stream().filter(used -> used.getKey().bay() != null).mapToInt(used -> used.getKey()
                .machines() * used.getValue()).sum();
        List<Platform> platforms = filled.counts().keySet().stream().filter(column -> column.bay() != null).map(Column::builds)
                .flatMap(List::stream)
                .map(Build::platform).distinct().toList();
        List<Pool> pools = market.pools();
        long bays = catalog.enclosures().stream().filter(enclosure -> platforms.stream().anyMatch(enclosure::takes))
                .mapToLong(enclosure -> enclosure.bays() * (order.onHand().getOrDefault(enclosure.sku(), 0)
                        + catalog.lots(enclosure.sku()).stream().filter(lot -> pools.stream().anyMatch(pool -> pool.accepts(lot)))
                                .mapToLong(Lot::available).sum())).sum();
        return new TooFewBays(sleds, (int) Math.min(Integer.MAX_VALUE, bays));
    }

    /** An enclosure with a supply, and the lightest sled that it would have to feed. */
    private record Option(Enclosure enclosure, Supply supply, double capacityW, double sledW) {
    }

    private Optional<Unfed> unfed(OrderLine line) {
        List<Option> options = new ArrayList<>();
        if (line.request().equipment().enclosure() == EnclosureFrom.OWN) {
            return Optional.empty();
        }
        for (Enclosure enclosure : catalog.enclosures()) {
            Set<String> sleds = catalog.platforms().stream().filter(enclosure::takes).map(Platform::sku)
                    .filter(sku -> line.request().platforms().isEmpty() || line.request().platforms().contains(sku))
                            .collect(Collectors.toSet());
            Optional<Double> lightest = sleds.isEmpty() || !ForbiddenPart.allows(line.request(), enclosure.sku()) ? Optional.empty()
                    : lightestW(line.request(), sleds);
            for (Supply supply : enclosure.supplies()) {
                if (lightest.isPresent() && ForbiddenPart.allows(line.request(), supply.sku())) {
                    options.add(new Option(enclosure, supply, EnclosurePower.capacityW(enclosure, supply, line.request().limit()),
                            lightest.get()));
                }
            }
        }
        ToDoubleFunction<Option> over = option -> option.sledW - option.capacityW;
        return options.stream().min((one, other) -> Double.compare(over.applyAsDouble(one), over.applyAsDouble(other)))
                .filter(option -> !EnclosurePower.allows(option.enclosure, option.supply, line.request().limit(), option.sledW))
                .map(option -> new Unfed(line.name(), option.sledW, option.enclosure.sku(), option.supply.sku(), option.supply.count(),
                        option.enclosure.baseW(),
                        Math.max(0, option.capacityW + option.enclosure.baseW())));
    }

    /** The least load of a machine that the line would accept, from whatever the shop has or has had; empty: none is valid. */
    private Optional<Double> lightestW(Request request, Set<String> platforms) {
        Map<String, List<Lot>> lots = new HashMap<>();
        catalog.parts().forEach(part -> lots.put(part.sku(), List.of(weighed(part))));
        Request one = new Request(request.name(), 1, request.require(), Rulebook.settled(request.limit()),
                new Goal(Objective.CHEAPEST, request.worth(), Licence.NONE), new Shortlist(1, request.step()),
                new PartChoice(platforms, request.forbid(), request.use(), Map.of(), request.equipment().withEnclosure(EnclosureFrom.OWN)));
        Findings findings = search.on(catalog.with(lots, new Labour(0, 0))).run(one, deadline);
        return findings.ranked().isEmpty() ? Optional.empty() : Optional.of(PowerDraw.loadW(findings.ranked().get(0).machines().get(0)));
    }

    private static Lot weighed(Part part) {
        return new Lot(part.sku(), "any", "any", Condition.NEW, 1_000, 0,
                List.of(new PriceBreak(1, Math.round(Bay.watts(part) * PER_WATT), OptionalLong.empty())), false);
    }
}
