package sledwright.planner.upgrade;

import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.function.BiFunction;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.Stream;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Labour;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.Objective;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.generator.Exact;
import sledwright.generator.Doubts;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.rules.Machine;
import sledwright.rules.Order;
import sledwright.rules.Rulebook;
import sledwright.rules.Violation;

/**
 * The exact search of what machines that stand can be made into: what an order costs here is what the customer spends. To change nothing,
 * which spares the labour of opening the machines, is one of its answers. What pulled parts fetch follows from each request's own terms.
 */
final class UpgradeSearch implements Exact {

    private final Catalog shop;
    private final Installed installed;
    private final Catalog stock;
    private final Search search;
    /** What the parts fetch -> the search of the stock at these prices. */
    private final Map<SortedMap<String, Long>, Search> searches = new HashMap<>();

    /** A change of the stock -> the search of what it leaves. */
    private final Map<Object, UpgradeSearch> changed = new HashMap<>();

    private UpgradeSearch(Catalog shop, Installed installed, Catalog stock, Search search) {
        this.shop = shop;
        this.installed = installed;
        this.stock = stock;
        this.search = search;
    }

    /** @param stock as {@link UpgradeStock} makes it of the shop's */
    static UpgradeSearch of(Catalog shop, Installed installed, Catalog stock) {
        return new UpgradeSearch(shop, installed, stock, new Search(stock));
    }

    @Override
    public UpgradeSearch on(Object change, Supplier<Catalog> other) {
        return changed.computeIfAbsent(change, same -> on(other.get()));
    }

    @Override
    public UpgradeSearch on(Catalog other) {
        return new UpgradeSearch(shop, installed, other, search);
    }

    /** The search of what the shop sells, without the machines that stand. */
    Search ofTheShop() {
        return search.on(shop);
    }

    @Override
    public Findings run(Request request, Deadline deadline) {
        return run(request, order -> true, (search, raised) -> search.run(raised, deadline));
    }

    @Override
    public Findings runHolding(String sku, Request request, Deadline deadline) {
        return run(request, order -> order.needed().containsKey(sku), (search, raised) -> search.runHolding(sku, raised, deadline));
    }

    private Findings run(Request request, Predicate<Order> holding, BiFunction<Search, Request, Findings> by) {
        Installed standing = installed.on(request.limit(), shop);
        Catalog told = UpgradeStock.on(stock, standing);
        long forgone = standing.creditOfParts() * standing.machines();
        Findings found = by.apply(searches.computeIfAbsent(standing.credits(),
                credits -> search.on(UpgradeStock.withFreePlatform(told, standing))), raised(request, forgone));
        List<Order> ranked = found.ranked().stream().map(order -> told(order, request, told)).toList();
        double less = request.objective() == Objective.CHEAPEST ? forgone : 0;
        Findings changed = new Findings(request, found.status(), found.best() - less, found.bound() - less, ranked, found.doubts());
        return untouched(request, told).filter(holding).map(order -> with(order, changed)).orElse(changed);
    }

    /** The request whose limit holds for what an order costs before so much comes off. */
    static Request raised(Request request, long by) {
        Limits limit = request.limit();
        return limit.price().isEmpty() ? request : request.withLimit(limit.withPrice(OptionalLong.of(limit.price().getAsLong() + by)));
    }

    /** The order at what the customer spends. */
    private static Order told(Order order, Request request, Catalog told) {
        List<Pick> picks = order.picks().stream().map(pick -> new Pick(told.lots(pick.sku()).stream()
                .filter(lot -> lot.lot().equals(pick.lot().lot())).findFirst().orElseThrow(), pick.quantity())).toList();
        return Order.of(order.machines(), picks, request, told);
    }

    /** The machines as they stand, where they answer the request. */
    private Optional<Order> untouched(Request request, Catalog told) {
        boolean lacksEnclosure = request.equipment().enclosure() == EnclosureFrom.NEW && shop.isSled(installed.build().platform());
        return lacksEnclosure ? Optional.empty() : Optional.of(asItStands(request, told)).filter(order -> misses(order).isEmpty());
    }

    /** What the machines as they stand do not keep of a request. */
    List<Violation> misses(Request request) {
        return misses(asItStands(request, UpgradeStock.on(stock, installed.on(request.limit(), shop))));
    }

    private List<Violation> misses(Order untouched) {
        Machine machine = Machine.of(installed.build(), untouched.request(), shop.throughputFactors());
        return Stream.concat(Rulebook.judge(machine).stream(), Rulebook.judge(untouched).stream()).toList();
    }

    /** Whether an order changes nothing. */
    boolean isAsItStands(Order order) {
        return order.machines().stream().allMatch(installed.build()::equals) && order.picks().stream().allMatch(UpgradeSearch::isInstalled);
    }

    /** Whether units come out of the machines. */
    static boolean isInstalled(Pick pick) {
        return pick.lot().lot().equals(Lot.INSTALLED);
    }

    private Order asItStands(Request request, Catalog told) {
        Build build = installed.build();
        List<Pick> picks = build.partCounts().keySet().stream().map(sku -> new Pick(told.lots(sku).stream()
                .filter(lot -> lot.lot().equals(Lot.INSTALLED)).findFirst().orElseThrow(), installed.units(sku))).toList();
        return Order.of(Collections.nCopies(installed.machines(), build), picks, request, told.with(told.lots(), new Labour(0, 0)));
    }

    /** What was found, where to change nothing will do as well. */
    private static Findings with(Order untouched, Findings changed) {
        Request request = changed.request();
        boolean cheapest = request.objective() == Objective.CHEAPEST;
        double own = figure(untouched);
        double other = changed.ranked().isEmpty() ? Double.NaN : changed.best();
        boolean first = Double.isNaN(other) || (cheapest ? own <= other
                : own > other || own == other && untouched.price().total() <= changed.ranked().get(0).price().total());
        List<Order> ranked = first ? List.of(untouched) : changed.ranked();
        double best = first ? own : other;
        if (changed.status() != Status.BEST_FOUND) {
            return new Findings(request, Status.PROVED, best, best, ranked, Doubts.NONE);
        }
        double bound = cheapest ? Math.min(changed.bound(), own) : Math.max(changed.bound(), own);
        return new Findings(request, cheapest && best <= bound ? Status.PROVED : Status.BEST_FOUND, best, bound, ranked,
                changed.doubts());
    }

    /** The figure that the objective looks at. */
    private static double figure(Order order) {
        return switch (order.request().objective()) {
            case CHEAPEST, BEST_VALUE -> order.price().total();
            case LEAST_TOTAL -> order.total();
            case MOST_THROUGHPUT -> order.figures().throughput();
            case MOST_BANDWIDTH -> order.figures().bandwidthGbs();
            case MOST_MEMORY -> order.figures().usableGb();
            case MOST_WORK -> order.figures().work();
            case MOST_CORES -> order.figures().cores();
        };
    }
}
