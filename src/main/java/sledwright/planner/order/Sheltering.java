package sledwright.planner.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Enclosure;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Goal;
import sledwright.domain.Labour;
import sledwright.domain.Licence;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
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
import sledwright.planner.order.OrderOutcome.LightestSled;
import sledwright.planner.order.OrderOutcome.TooFewBays;
import sledwright.planner.order.OrderOutcome.Unfed;
import sledwright.planner.order.OrderOutcome.Unhoused;
import sledwright.planner.order.OrderOutcome.Unsold;
import sledwright.planner.order.fill.Tally;
import sledwright.planner.order.market.Bay;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.Pool;
import sledwright.planner.order.relax.Pricer;
import sledwright.rules.Rulebook;
import sledwright.rules.choice.ForbiddenPart;
import sledwright.rules.enclosure.EnclosurePower;

/** Whether it is enclosures that an order lacks: their watts, their bays, or any at all. */
record Sheltering(Catalog catalog, OrderRequest order, Search search, Deadline deadline) {

    /** Units of price that stand for a watt where the lightest machine is looked for. */
    private static final double PER_WATT = 1e6;

    /** More units of a part than a machine takes. */
    private static final int MANY = 1_000;

    /**
     * Lines that enclosures keep from a single machine.
     *
     * @param lines    those for which no number of units of what is offered would do
     * @param unfed    those whose sleds no enclosure that is offered feeds, of what is in stock or of whatever is offered
     * @param unhoused those for whose sleds no enclosure is offered
     */
    record Stuck(Set<Integer> lines, List<Unfed> unfed, List<Unhoused> unhoused) {
    }

    /** @param delivered of which lines nothing is looked at */
    Stuck stuck(Tally delivered) {
        Stuck stuck = new Stuck(new TreeSet<>(), new ArrayList<>(), new ArrayList<>());
        for (int line = 0; line < order.lines().size() && !deadline.isOver(); line++) {
            if (delivered.missing(line) == order.lines().get(line).machines()
                    && order.lines().get(line).request().equipment().enclosure() != EnclosureFrom.OWN) {
                look(line, stuck);
            }
        }
        return stuck;
    }

    private void look(int number, Stuck stuck) {
        OrderLine line = order.lines().get(number);
        Map<String, List<Lot>> stock = inStock(line.request());
        Map<String, List<Lot>> offers = offered();
        Optional<Unfed> unfed = unfed(line, stock, true);
        Optional<Unfed> neverFed = unfed(line, offers, false);
        Optional<Unhoused> unhoused = unhoused(line, stock);
        Optional<Unhoused> neverHoused = unhoused(line, offers);
        // What was not searched to its end says nothing.
        if (!deadline.isOver()) {
            unfed.or(() -> neverFed).ifPresent(stuck.unfed::add);
            unhoused.or(() -> neverHoused).ifPresent(stuck.unhoused::add);
            if (neverFed.isPresent() || neverHoused.isPresent()) {
                stuck.lines.add(number);
            }
        }
    }

    /**
     * @param filled an order from a stock that has all that is lacking, without the lines that are stuck
     * @param lacks  what that is
     */
    EnclosureLack of(Tally filled, List<Lack> lacks, Stuck stuck) {
        return new EnclosureLack(stuck.unfed, stuck.unhoused, lacks.stream().anyMatch(lack -> catalog.enclosure(lack.sku()).isPresent())
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

        double overW() {
            return sledW - capacityW;
        }

        Unfed unfed(OrderLine line, boolean inStock) {
            Limits limit = line.request().limit();
            return new Unfed(new LightestSled(line.name(), sledW, inStock), enclosure.sku(), supply.sku(), supply.count(),
                    enclosure.baseW(), Math.max(0, capacityW + enclosure.baseW()), limit.lowLine() ? limit.mainsV()
                    : OptionalDouble.empty());
        }
    }

    /** The enclosure on offer that comes closest to feeding a sled of some parts; empty where one does, or no machine needs it. */
    private Optional<Unfed> unfed(OrderLine line, Map<String, List<Lot>> parts, boolean inStock) {
        Request request = line.request();
        if (stands(request, parts)) {
            return Optional.empty();
        }
        return options(request, parts).stream().min(Comparator.comparingDouble(Option::overW))
                .filter(option -> !EnclosurePower.allows(option.enclosure, option.supply, request.limit(), option.sledW))
                .map(option -> option.unfed(line, inStock));
    }

    /** Whether some machine needs no enclosure. */
    private boolean stands(Request request, Map<String, List<Lot>> parts) {
        return lightestW(request, platforms(request, platform -> !catalog.isSled(platform)), parts).isPresent();
    }

    /** The enclosures that are offered for sleds of a line, each with each of its supplies that is. */
    private List<Option> options(Request request, Map<String, List<Lot>> parts) {
        List<Option> options = new ArrayList<>();
        for (Enclosure enclosure : catalog.enclosures()) {
            List<Supply> supplies = enclosure.supplies().stream().filter(supply -> isOffered(request, supply.sku())).toList();
            if (isOffered(request, enclosure.sku()) && !supplies.isEmpty()) {
                lightestW(request, platforms(request, enclosure::takes), parts).ifPresent(sledW -> supplies.forEach(supply -> options.add(
                        new Option(enclosure, supply, EnclosurePower.capacityW(enclosure, supply, request.limit()), sledW))));
            }
        }
        return options;
    }

    /** Why there is no enclosure for a line's sleds; empty where there is, or no machine needs one. */
    private Optional<Unhoused> unhoused(OrderLine line, Map<String, List<Lot>> parts) {
        Request request = line.request();
        if (stands(request, parts) || !options(request, parts).isEmpty()) {
            return Optional.empty();
        }
        List<Enclosure> enclosures = catalog.enclosures().stream()
                .filter(enclosure -> lightestW(request, platforms(request, enclosure::takes), parts).isPresent()).toList();
        return enclosures.isEmpty() ? Optional.empty() : Optional.of(new Unhoused(line.name(), enclosures.stream()
                .map(enclosure -> without(request, enclosure)).toList()));
    }

    private Unsold without(Request request, Enclosure enclosure) {
        return isOffered(request, enclosure.sku()) ? new Unsold(enclosure.sku(), enclosure.supplies().stream().map(Supply::sku)
                .distinct().toList()) : new Unsold(enclosure.sku(), List.of());
    }

    /** Whether the shop offers some of a part, or the customer has it; in another condition or later than the line allows, too. */
    private boolean isOffered(Request request, String sku) {
        return isOffered(sku) && ForbiddenPart.allows(request, sku);
    }

    private boolean isOffered(String sku) {
        return !catalog.lots(sku).isEmpty() || order.onHand().getOrDefault(sku, 0) > 0;
    }

    private Set<String> platforms(Request request, Predicate<Platform> which) {
        return catalog.platforms().stream().filter(which).map(Platform::sku)
                .filter(sku -> request.platforms().isEmpty() || request.platforms().contains(sku)).collect(Collectors.toSet());
    }

    /** As many units as there may be of each part that is offered. */
    private Map<String, List<Lot>> offered() {
        return weighed(part -> isOffered(part.sku()) ? MANY : 0);
    }

    /** The units that the line itself accepts, and those that the customer has. */
    private Map<String, List<Lot>> inStock(Request request) {
        Pool pool = Pool.of(request.limit());
        return weighed(part -> order.onHand().getOrDefault(part.sku(), 0)
                + catalog.lots(part.sku()).stream().filter(pool::accepts).mapToInt(lot -> Math.min(MANY, lot.available())).sum());
    }

    /** Parts that cost what they load. */
    private Map<String, List<Lot>> weighed(ToIntFunction<Part> units) {
        Map<String, List<Lot>> lots = new HashMap<>();
        for (Part part : catalog.parts()) {
            int available = units.applyAsInt(part);
            if (available > 0) {
                lots.put(part.sku(), List.of(Pricer.lot(part.sku(), available, Math.round(Bay.watts(part) * PER_WATT))));
            }
        }
        return lots;
    }

    /** The least load of a machine of some parts that the line would accept; empty: none is valid. */
    private Optional<Double> lightestW(Request request, Set<String> platforms, Map<String, List<Lot>> parts) {
        if (platforms.isEmpty()) {
            return Optional.empty();
        }
        Request one = new Request(request.name(), 1, request.require(), Rulebook.settled(request.limit()),
                new Goal(Objective.CHEAPEST, request.worth(), Licence.NONE), new Shortlist(1, request.step()),
                new PartChoice(platforms, request.forbid(), request.use(), Map.of(), request.equipment().withEnclosure(EnclosureFrom.OWN)));
        Findings findings = search.on(catalog.with(parts, new Labour(0, 0))).run(one, deadline);
        return findings.ranked().isEmpty() ? Optional.empty() : Optional.of(PowerDraw.loadW(findings.ranked().get(0).machines().get(0)));
    }
}
