package sledwright.planner.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.TreeMap;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Lot;
import sledwright.domain.Lot.PriceBreak;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.OrderOutcome.Lack;
import sledwright.planner.order.OrderOutcome.Later;
import sledwright.planner.order.OrderOutcome.LineFill;
import sledwright.planner.order.OrderOutcome.Shortages;
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
final class Lacking {

    /** The name of lots that do not exist. */
    private static final String MISSING = "missing";

    /** Minor units: more than any machine costs. */
    private static final long DEAR = 1_000_000;

    private final Catalog catalog;
    private final OrderRequest order;
    private final Search search;
    private final long seed;
    private final Deadline deadline;

    Lacking(Catalog catalog, OrderRequest order, Search search, long seed, Deadline deadline) {
        this.catalog = catalog;
        this.order = order;
        this.search = search;
        this.seed = seed;
        this.deadline = deadline;
    }

    /** @param delivered as much as there is stock for */
    Shortages of(Tally delivered) {
        boolean most = isMost(delivered);
        Catalog more = withMissing();
        Tally filled = solve(more, order);
        List<String> impossible = filled.market().lines().stream().map(OrderLine::name)
                .filter(name -> filled.missing(index(name)) > 0).toList();
        return new Shortages(most, lacks(filled), impossible, later());
    }

    private int index(String line) {
        return order.lines().stream().map(OrderLine::name).toList().indexOf(line);
    }

    private Tally solve(Catalog shop, OrderRequest asked) {
        return new OrderSolver(shop, asked, search.on(shop), seed, deadline, now -> { }).solve();
    }

    /** Whether no order delivers machines of more weight, by the bound of an order whose parts are free. */
    private boolean isMost(Tally delivered) {
        Market market = delivered.market();
        long[] weights = order.lines().stream().mapToLong(line -> line.priority() * ScaledMoney.ONE).toArray();
        Columns columns = new Columns();
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

    /** The shop with as many more of every part as may be wanted, each dearer than any machine, so that few are taken. */
    private Catalog withMissing() {
        Map<String, List<Lot>> lots = new HashMap<>();
        catalog.parts().forEach(part -> {
            List<Lot> all = new ArrayList<>(catalog.lots(part.sku()));
            if (!all.isEmpty()) {
                long price = all.stream().flatMap(lot -> lot.breaks().stream()).mapToLong(PriceBreak::unitPrice).max().orElse(0) + DEAR;
                int units = (int) Math.min(1_000_000, 64L * order.machines());
                all.add(new Lot(part.sku(), MISSING, MISSING, Condition.NEW, units, 0,
                        List.of(new PriceBreak(1, price, OptionalLong.empty())), true));
                lots.put(part.sku(), all);
            }
        });
        return catalog.withLots(lots);
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
    private Later later() {
        OrderRequest waiting = new OrderRequest(order.name(), order.lines().stream().map(Lacking::waiting).toList(), order.suppliersMax(),
                order.deliveryCharge(), order.modulePartCharge(), order.onHand());
        Tally tally = solve(catalog, waiting);
        if (tally.missing() > 0) {
            return null;
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
        return new Later(assembly.price(lines, new Suppliers(tally.market()).used(tally).size()).total(), purchases,
                purchases.stream().mapToInt(pick -> pick.lot().leadDays()).max().orElse(0));
    }

    private static OrderLine waiting(OrderLine line) {
        Request request = line.request();
        return new OrderLine(line.name(), request.withLimit(request.limit().withLeadDays(OptionalInt.empty())), line.priority(),
                line.uniform());
    }
}
