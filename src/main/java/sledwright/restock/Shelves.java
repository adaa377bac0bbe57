package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.ToLongFunction;
import sledwright.domain.Availability;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Lot;
import sledwright.domain.Part;
import sledwright.domain.PartKind;
import sledwright.domain.RestockRequest;
import sledwright.domain.SupplyOffer;

/**
 * What stands on the shelf, what can be bought, and what a unit of each part is worth.
 *
 * <p>A unit is worth the least that the catalogue says of it, what the shop paid or asks; where the catalogue says nothing, the least that
 * a supplier asks. So what further suppliers offer makes nothing that stands there worth less. A unit that is left over at the end is worth
 * that, or what was paid for it where that is less, less the depreciation. (Inventory at the lower of cost and market: common practice.)
 */
final class Shelves {

    /**
     * Units of one part that are alike to every customer.
     *
     * @param arrivalDay the day from which they can be used
     */
    record Pool(String sku, Condition condition, int arrivalDay) {
    }

    private static final int MANY = 10_000_000;

    private final Catalog catalog;
    private final RestockRequest request;
    private final Map<Pool, Integer> standing = new TreeMap<>(Comparator.comparing(Pool::sku)
            .thenComparing(Pool::condition).thenComparingInt(Pool::arrivalDay));
    private final List<SupplyOffer> offers;
    private final Map<String, Long> worth = new HashMap<>();
    private final Map<Condition, Condition> likeness = new EnumMap<>(Condition.class);

    Shelves(Catalog catalog, RestockRequest request) {
        this.catalog = catalog;
        this.request = request;
        Arrays.stream(Condition.values()).forEach(condition -> likeness.put(condition, likeness(request, condition)));
        catalog.lots().forEach((sku, lots) -> lots.stream().filter(lot -> lot.available() > 0 && inTime(lot.leadDays()))
                .forEach(lot -> standing.merge(new Pool(sku, lot.condition(), lot.leadDays()), lot.available(), Integer::sum)));
        offers = request.offers().stream().filter(offer -> offer.available() > 0 && inTime(offer.leadDays())).toList();
        for (Part part : catalog.parts()) {
            cheapest(part.sku()).ifPresent(least -> worth.put(part.sku(), least));
        }
    }

    private boolean inTime(int leadDays) {
        return leadDays < request.horizonDays();
    }

    Catalog catalog() {
        return catalog;
    }

    RestockRequest request() {
        return request;
    }

    /** Units that the shop has or is sent already. */
    Map<Pool, Integer> standing() {
        return standing;
    }

    /** What can be bought and arrives in time. */
    List<SupplyOffer> offers() {
        return offers;
    }

    static Pool pool(SupplyOffer offer) {
        return new Pool(offer.sku(), offer.condition(), offer.leadDays());
    }

    int standing(String sku) {
        return standing.entrySet().stream().filter(entry -> entry.getKey().sku().equals(sku)).mapToInt(Map.Entry::getValue).sum();
    }

    /** What a unit is worth today, minor units; empty: it is not available. */
    OptionalLong worth(String sku) {
        Long known = worth.get(sku);
        return known == null ? OptionalLong.empty() : OptionalLong.of(known);
    }

    /** What a unit is worth that is left over at the end, minor units. */
    double leftover(String sku) {
        return worth.getOrDefault(sku, 0L) * (1 - request.lost(kind(sku)));
    }

    /** The same of a unit that is bought: never more than was paid for it. */
    double leftover(SupplyOffer offer) {
        return Math.min(offer.unitCost(), worth.getOrDefault(offer.sku(), 0L)) * (1 - request.lost(kind(offer.sku())));
    }

    PartKind kind(String sku) {
        return PartKind.of(catalog.part(sku).orElseThrow());
    }

    private OptionalLong cheapest(String sku) {
        List<Long> prices = new ArrayList<>();
        for (Lot lot : catalog.lots(sku)) {
            lot.breaks().forEach(step -> prices.add(Math.min(step.unitPrice(), step.unitCost().orElse(Long.MAX_VALUE))));
        }
        if (prices.isEmpty()) {
            request.offers().stream().filter(offer -> offer.sku().equals(sku)).forEach(offer -> prices.add(offer.unitCost()));
        }
        return prices.stream().mapToLong(Long::longValue).min();
    }

    /**
     * A catalogue of all that is available within the horizon, each part at one unit price: for the shop itself there are no price
     * lists, least quantities or days to wait; those are the plan's concern.
     *
     * @param unitPrice sku -> minor units
     */
    Catalog priced(ToLongFunction<String> unitPrice) {
        Map<String, Map<Condition, Integer>> units = new TreeMap<>();
        standing.forEach((pool, count) -> add(units, pool, count));
        offers.forEach(offer -> add(units, pool(offer), offer.available()));
        Map<String, List<Lot>> lots = new TreeMap<>();
        units.forEach((sku, byCondition) -> {
            List<Lot.PriceBreak> price = List.of(new Lot.PriceBreak(1, Math.max(0, unitPrice.applyAsLong(sku)), OptionalLong.empty()));
            List<Lot> offered = new ArrayList<>();
            byCondition.forEach((condition, count) -> offered.add(
                    new Lot(sku, condition.label(), "all", condition, new Availability(count, 0), price, false)));
            lots.put(sku, offered);
        });
        return catalog.withLots(lots);
    }

    /** A catalogue of all that this one has a price for, in stock or not and in any number, at what units are worth today. */
    Catalog listed() {
        Map<String, List<Lot>> lots = new TreeMap<>();
        catalog.lots().forEach((sku, offered) -> {
            List<Lot.PriceBreak> price = List.of(new Lot.PriceBreak(1, worth(sku).orElse(0), OptionalLong.empty()));
            lots.put(sku, offered.stream().map(Lot::condition).map(this::likeness).distinct()
                    .map(condition -> new Lot(sku, condition.label(), "all", condition, new Availability(MANY, 0), price, false)).toList());
        });
        return catalog.withLots(lots);
    }

    /** The same as {@link #priced} at what units are worth today. */
    Catalog priced() {
        return priced(sku -> worth(sku).orElse(0));
    }

    private void add(Map<String, Map<Condition, Integer>> units, Pool pool, int count) {
        units.computeIfAbsent(pool.sku(), sku -> new EnumMap<>(Condition.class)).merge(likeness(pool.condition()), count,
                (one, other) -> (int) Math.min(MANY, (long) one + other));
    }

    /** The first condition that the same classes accept: to the search units of both are alike. */
    Condition likeness(Condition condition) {
        return likeness.get(condition);
    }

    private static Condition likeness(RestockRequest request, Condition condition) {
        return Arrays.stream(Condition.values()).filter(other -> request.classes().stream()
                .map(asked -> accepted(asked.request().limit().conditions()))
                .allMatch(accepted -> accepted.contains(other) == accepted.contains(condition))).findFirst().orElseThrow();
    }

    /** The conditions that a class accepts. */
    static Set<Condition> accepted(Set<Condition> asked) {
        return asked.isEmpty() ? Set.of(Condition.values()) : asked;
    }
}
