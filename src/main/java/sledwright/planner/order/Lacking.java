package sledwright.planner.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import sledwright.domain.Availability;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.Lot.PriceBreak;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.OrderOutcome.EnclosureLack;
import sledwright.planner.order.OrderOutcome.Lack;
import sledwright.planner.order.OrderOutcome.Later;
import sledwright.planner.order.OrderOutcome.LineFill;
import sledwright.planner.order.OrderOutcome.Shortages;
import sledwright.planner.order.OrderOutcome.TooFewSuppliers;
import sledwright.planner.order.fill.Suppliers;
import sledwright.planner.order.fill.Tally;
import sledwright.planner.order.market.Columns;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.Pool;
import sledwright.planner.order.market.ScaledMoney;
import sledwright.planner.order.relax.ColumnGeneration;
import sledwright.planner.order.relax.Pricer;
import sledwright.planner.order.relax.Restrictions;

/** What an order lacks that cannot be delivered in full: by orders on a stock that has more, or later. */
record Lacking(Catalog catalog, OrderRequest order, Search search, long seed, Deadline deadline) {

    /** The name of lots that do not exist. */
    private static final String MISSING = "missing";

    /** Minor units: more than any machine costs. */
    private static final long DEAR = 1_000_000;

    private static final int NO_LIMIT_UNITS = 1_000_000;
    private static final ToIntFunction<String> NO_LIMIT = sku -> NO_LIMIT_UNITS;

    /** Minor units for each machine that an order which waits may be above the least. */
    private static final int LITTLE = 100;

    /** No question takes more than this share of the time that is left. */
    private static final int SHARES = 3;

    /**
     * @param delivered as much as there is stock for
     * @param most      whether that is proved to be the most already
     */
    Shortages of(Tally delivered, boolean most) {
        if (deadline.isOver()) {
            return Shortages.unknown(most);
        }
        Sheltering sheltering = new Sheltering(catalog, order, search, deadline);
        Sheltering.Stuck stuck = sheltering.stuck(delivered);
        boolean proved = most || isMost(delivered);
        if (stuck.lines().size() == order.lines().size()) {
            return new Shortages(proved, true, List.of(), Optional.empty(), new EnclosureLack(stuck.unfed(), stuck.unhoused(),
                    Optional.empty()), Optional.empty());
        }
        // No number of units helps the lines that are stuck.
        List<OrderLine> lines = IntStream.range(0, order.lines().size()).filter(line -> !stuck.lines().contains(line))
                .mapToObj(order.lines()::get).toList();
        OrderSolver filling = solver(withMissing(catalog, NO_LIMIT), order.withLines(lines).withSuppliersMax(OptionalInt.empty()));
        Tally filled = filling.solve(DEAR / 2 * ScaledMoney.ONE);
        List<Lack> lacks = lacks(filled);
        boolean all = stuck.lines().isEmpty();
        Optional<TooFewSuppliers> suppliers = all && filled.missing() == 0 ? tooFew(filled, lacks) : Optional.empty();
        EnclosureLack enclosures = sheltering.of(filled, lacks, stuck);
        Optional<Later> later = all ? later() : Optional.empty();
        // Fewer units could suffice where that is not proved, and nothing else be in the way.
        return new Shortages(proved, !deadline.isOver() && filling.incumbent().isProved(), lacks, suppliers, enclosures, later);
    }

    /** Whether more suppliers are what it takes, when the units that are lacking are there. */
    private Optional<TooFewSuppliers> tooFew(Tally filled, List<Lack> lacks) {
        int allowed = order.suppliersMax().orElse(Integer.MAX_VALUE);
        int used = new Suppliers(filled.market()).used(filled).size();
        Map<String, Integer> units = lacks.stream().collect(Collectors.toMap(Lack::sku, Lack::units));
        Catalog supplied = withMissing(catalog, sku -> units.getOrDefault(sku, 0));
        for (int suppliers = allowed; suppliers < used; suppliers++) {
            Tally tried = solve(supplied, order.withSuppliersMax(OptionalInt.of(suppliers)), Long.MAX_VALUE / 4);
            if (tried.missing() == 0) {
                return suppliers == allowed ? Optional.empty() : Optional.of(tooFew(suppliers, tried, lacks));
            }
        }
        return used > allowed ? Optional.of(tooFew(used, filled, lacks)) : Optional.empty();
    }

    private TooFewSuppliers tooFew(int enough, Tally found, List<Lack> lacks) {
        Assembly assembly = new Assembly(found);
        return new TooFewSuppliers(order.suppliersMax().orElseThrow(), enough,
                lacks.isEmpty() ? OptionalLong.of(assembly.price(assembly.lines(), enough).total()) : OptionalLong.empty());
    }

    private int index(String line) {
        return order.lines().stream().map(OrderLine::name).toList().indexOf(line);
    }

    /** @param close what an order may be above the least, scaled */
    private Tally solve(Catalog shop, OrderRequest asked, long close) {
        return solver(shop, asked).solve(close);
    }

    private OrderSolver solver(Catalog shop, OrderRequest asked) {
        return new OrderSolver(shop, asked, search.on(shop), seed, deadline.share(SHARES), now -> { });
    }

    /** Whether no order delivers machines of more weight, by the bound of an order whose parts are free. */
    private boolean isMost(Tally delivered) {
        Market market = delivered.market();
        long[] weights = order.lines().stream().mapToLong(line -> line.priority() * ScaledMoney.ONE).toArray();
        Columns columns = new Columns(order.lines().size());
        delivered.counts().keySet().forEach(columns::add);
        ColumnGeneration generation = new ColumnGeneration(market, new Pricer(market, search, true), columns, weights, true,
                Restrictions.NONE);
        generation.run(Long.MAX_VALUE, deadline, bound -> { });
        long missing = 0;
        for (int line = 0; line < weights.length; line++) {
            missing += weights[line] * delivered.missing(line);
        }
        return generation.bound() > missing - ScaledMoney.ONE;
    }

    /** What a unit that is lacking counts beside its price: no delivery is saved and no machine mixed for it. */
    private long dear() {
        Market market = new Market(catalog, order);
        return DEAR + order.deliveryCharge() * market.suppliers().size() + order.modulePartCharge();
    }

    /** The shop with more of every part, each unit dearer than any machine, so that few are taken. */
    private Catalog withMissing(Catalog shop, ToIntFunction<String> most) {
        Map<String, List<Lot>> lots = new HashMap<>();
        long dear = dear();
        shop.parts().forEach(part -> {
            List<Lot> all = new ArrayList<>(shop.lots(part.sku()));
            int units = (int) Math.min(most.applyAsInt(part.sku()), 64L * order.machines());
            if (!all.isEmpty() && units > 0) {
                long price = all.stream().mapToLong(Lot::dearest).max().orElse(0) + dear;
                all.add(new Lot(part.sku(), MISSING, MISSING, Condition.NEW, new Availability(units, 0),
                        List.of(new PriceBreak(1, price, OptionalLong.empty())), true));
            }
            lots.put(part.sku(), all);
        });
        return shop.withLots(lots);
    }

    private List<Lack> lacks(Tally filled) {
        Assembly assembly = new Assembly(filled);
        SortedMap<String, Map<String, Integer>> bySku = new TreeMap<>();
        for (LineFill line : assembly.lines()) {
            line.fills().forEach(fill -> fill.picks().forEach(picks -> picks.stream().filter(pick -> pick.lot().lot().equals(MISSING))
                    .forEach(pick -> bySku.computeIfAbsent(pick.sku(), sku -> new TreeMap<>())
                    .merge(line.line().name(), pick.quantity(), Integer::sum))));
        }
        Map<String, Integer> all = new HashMap<>();
        assembly.picks().stream().filter(pick -> pick.lot().lot().equals(MISSING))
                .forEach(pick -> all.merge(pick.sku(), pick.quantity(), Integer::sum));
        return all.entrySet().stream()
                .map(entry -> new Lack(entry.getKey(), entry.getValue(), bySku.getOrDefault(entry.getKey(), Map.of())))
                .sorted(Comparator.comparing(Lack::sku)).toList();
    }

    /** The cheapest whole order if every line waited as long as it takes. */
    private Optional<Later> later() {
        if (order.lines().stream().map(OrderLine::request).map(Request::limit).noneMatch(this::refusesLate)) {
            return Optional.empty();
        }
        Tally tally = solve(catalog, order.withLines(order.lines().stream().map(Lacking::waiting).toList()),
                order.machines() * LITTLE * ScaledMoney.ONE);
        if (tally.missing() > 0) {
            return Optional.empty();
        }
        Assembly assembly = new Assembly(tally);
        List<LineFill> lines = assembly.lines();
        Map<Lot, Integer> late = new HashMap<>();
        for (LineFill line : lines) {
            Pool asked = Pool.of(order.lines().get(index(line.line().name())).request().limit());
            line.fills().forEach(fill -> fill.picks().forEach(picks -> picks.stream().filter(pick -> !asked.accepts(pick.lot()))
                    .forEach(pick -> late.merge(pick.lot(), pick.quantity(), Integer::sum))));
        }
        List<Pick> purchases = late.entrySet().stream().map(entry -> new Pick(entry.getKey(), entry.getValue()))
                .sorted(Comparator.comparing(Pick::sku).thenComparing(pick -> pick.lot().lot())).toList();
        return Optional.of(new Later(assembly.price(lines, new Suppliers(tally.market()).used(tally).size()).total(), purchases,
                purchases.stream().mapToInt(pick -> pick.lot().leadDays()).max().orElse(0)));
    }

    /** Whether some lot is refused for its lead time alone. */
    private boolean refusesLate(Limits limit) {
        Pool asked = Pool.of(limit);
        Pool waiting = Pool.of(limit.waiting());
        return catalog.lots().values().stream().flatMap(List::stream).anyMatch(lot -> waiting.accepts(lot) && !asked.accepts(lot));
    }

    private static OrderLine waiting(OrderLine line) {
        Request request = line.request();
        return new OrderLine(line.name(), request.withLimit(request.limit().waiting()), line.priority(),
                line.uniform());
    }
}
