package sledwright.planner.upgrade;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiFunction;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.Collectors;
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
    /** What the parts fetch, and of which none on hand goes in -> the search of the stock like that. */
    private final Map<List<Object>, Search> searches = new HashMap<>();

    /** A change of the stock -> the search of what it leaves. */
    private final Map<Object, UpgradeSearch> changed = new HashMap<>();

    /** @param stock as {@link UpgradeStock} makes it of the shop's */
    UpgradeSearch(Catalog shop, Installed installed, Catalog stock, Search search) {
        this.shop = shop;
        this.installed = installed;
        this.stock = stock;
        this.search = search;
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
        Findings changed = changed(request, standing, Set.of(), told, by);
        return untouched(request, told).filter(holding).map(order -> better(
                new Findings(request, Status.PROVED, figure(order), figure(order), List.of(order), Doubts.NONE), changed)).orElse(changed);
    }

    /**
     * What the machines can be made into. Nobody takes a unit out for its credit to put one of the same part in that was on hand: where
     * that would pay, all that stand stay in, or none on hand goes in.
     *
     * @param standing at what its parts fetch, nothing for those of which all stay
     * @param withheld parts of which none on hand goes in
     */
    private Findings changed(Request request, Installed standing, Set<String> withheld, Catalog told,
            BiFunction<Search, Request, Findings> by) {
        long forgone = standing.creditOfParts() * standing.machines();
        Findings found = by.apply(searches.computeIfAbsent(List.of(standing.credits(), withheld), key -> search.on(
                UpgradeStock.withFreePlatform(UpgradeStock.on(stock, standing, withheld), standing))), raised(request, forgone));
        Optional<String> exchanged = found.ranked().stream().findFirst().flatMap(order -> exchanged(order, standing));
        if (exchanged.isPresent()) {
            Set<String> others = new TreeSet<>(withheld);
            others.add(exchanged.get());
            return better(changed(request, standing.keeping(exchanged.get()), withheld, told, by),
                    changed(request, standing, others, told, by));
        }
        List<Order> ranked = found.ranked().stream().map(order -> told(order, request, told)).toList();
        boolean cheapest = request.objective() == Objective.CHEAPEST;
        double best = cheapest && !ranked.isEmpty() ? figure(ranked.get(0)) : found.best() - (cheapest ? forgone : 0);
        double bound = found.status() == Status.PROVED ? best : found.bound() - (cheapest ? forgone : 0);
        return new Findings(request, found.status(), best, bound, ranked, found.doubts());
    }

    /** A part that fetches something, of which units on hand go in while some that stand come out. */
    private static Optional<String> exchanged(Order order, Installed standing) {
        Map<String, Integer> stay = order.picks().stream().filter(UpgradeSearch::isInstalled)
                .collect(Collectors.toMap(Pick::sku, Pick::quantity, Integer::sum));
        return order.picks().stream().filter(pick -> pick.lot().lot().equals(Lot.ON_HAND)).map(Pick::sku)
                .filter(sku -> standing.credit(sku) > 0 && stay.getOrDefault(sku, 0) < standing.units(sku)).findFirst();
    }

    /** The request whose limit holds for what an order costs before so much comes off. */
    static Request raised(Request request, long by) {
        Limits limit = request.limit();
        return limit.price().isEmpty() ? request : request.withLimit(limit.withPrice(OptionalLong.of(limit.price().getAsLong() + by)));
    }

    /** The order at what the customer spends; of one part the units that stand come before those on hand. */
    private Order told(Order order, Request request, Catalog told) {
        Map<String, Integer> own = order.picks().stream().filter(pick -> pick.lot().onHand())
                .collect(Collectors.toMap(Pick::sku, Pick::quantity, Integer::sum));
        List<Pick> picks = new ArrayList<>();
        for (Pick pick : order.picks()) {
            if (!pick.lot().onHand()) {
                picks.add(new Pick(lot(told, pick.sku(), pick.lot().lot()), pick.quantity()));
            } else if (own.containsKey(pick.sku())) {
                int units = own.remove(pick.sku());
                int stay = Math.min(units, installed.units(pick.sku()));
                if (stay > 0) {
                    picks.add(new Pick(lot(told, pick.sku(), Lot.INSTALLED), stay));
                }
                if (units > stay) {
                    picks.add(new Pick(lot(told, pick.sku(), Lot.ON_HAND), units - stay));
                }
            }
        }
        return Order.of(order.machines(), picks, request, told);
    }

    private static Lot lot(Catalog told, String sku, String name) {
        return told.lots(sku).stream().filter(lot -> lot.lot().equals(name)).findFirst().orElseThrow();
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
        return Stream.concat(Rulebook.judge(machine).stream(), Rulebook.judge(untouched).stream()).distinct().toList();
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
        List<Pick> picks = build.partCounts().keySet().stream().map(sku -> new Pick(lot(told, sku, Lot.INSTALLED), installed.units(sku)))
                .toList();
        return Order.of(Collections.nCopies(installed.machines(), build), picks, request, told.with(told.lots(), new Labour(0, 0)));
    }

    /** The better of two answers to one request, of equals the first; what keeps either in doubt keeps both. */
    private static Findings better(Findings one, Findings other) {
        if (one.status() == Status.IMPOSSIBLE || other.status() == Status.IMPOSSIBLE) {
            return one.status() == Status.IMPOSSIBLE ? other : one;
        }
        boolean cheapest = one.request().objective() == Objective.CHEAPEST;
        boolean first = other.ranked().isEmpty() || !one.ranked().isEmpty() && (cheapest ? one.best() <= other.best()
                : one.best() > other.best() || one.best() == other.best()
                && one.ranked().get(0).price().total() <= other.ranked().get(0).price().total());
        Findings found = first ? one : other;
        if (one.status() == Status.PROVED && other.status() == Status.PROVED) {
            return new Findings(found.request(), Status.PROVED, found.best(), found.best(), found.ranked(), Doubts.NONE);
        }
        double bound = cheapest ? Math.min(one.bound(), other.bound()) : Math.max(one.bound(), other.bound());
        return new Findings(found.request(), cheapest && found.best() <= bound ? Status.PROVED : Status.BEST_FOUND, found.best(), bound,
                found.ranked(), Doubts.ofAll(List.of(one.doubts(), other.doubts())));
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
