package sledwright.oracle;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.Predicate;
import java.util.stream.Stream;
import sledwright.domain.Assortment;
import sledwright.domain.Catalog;
import sledwright.domain.Enclosure;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.SupplierNames;
import sledwright.domain.Request;
import sledwright.domain.Stationery;
import sledwright.samples.Shops;
import sledwright.samples.Variations;

/** Makes an order smaller for as long as something remains true of it: fewer lines, machines, parts, lots and wishes. */
final class OrderShrinker {

    private OrderShrinker() {
    }

    /** An order of which {@code stays} is still true and of no order one step smaller. */
    static RandomOrder shrink(RandomOrder from, Predicate<RandomOrder> stays) {
        RandomOrder current = from;
        for (boolean smaller = true; smaller; ) {
            smaller = false;
            for (RandomOrder next : Stream.concat(orders(current), catalogs(current)).toList()) {
                if (stays.test(next)) {
                    current = next;
                    smaller = true;
                    break;
                }
            }
        }
        return current;
    }

    private static Stream<RandomOrder> orders(RandomOrder that) {
        OrderRequest order = that.order();
        List<OrderRequest> orders = new ArrayList<>();
        Shrinker.without(order.lines()).stream().filter(lines -> !lines.isEmpty()).forEach(lines -> orders.add(with(order, lines)));
        for (int i = 0; i < order.lines().size(); i++) {
            OrderLine line = order.lines().get(i);
            List<OrderLine> others = new ArrayList<>();
            Shrinker.requests(line.request()).forEach(request -> others.add(new OrderLine(line.name(), request, line.priority(), line.uniform())));
            others.add(new OrderLine(line.name(), line.request(), 1, line.uniform()));
            others.add(new OrderLine(line.name(), line.request(), line.priority(), false));
            for (OrderLine other : others) {
                List<OrderLine> lines = new ArrayList<>(order.lines());
                lines.set(i, other);
                orders.add(with(order, lines));
            }
        }
        orders.add(new OrderRequest(order.name(), order.lines(), OptionalInt.empty(), order.deliveryCharge(), order.modulePartCharge(), order.onHand()));
        orders.add(new OrderRequest(order.name(), order.lines(), order.suppliersMax(), 0, order.modulePartCharge(), order.onHand()));
        orders.add(new OrderRequest(order.name(), order.lines(), order.suppliersMax(), order.deliveryCharge(), 0, order.onHand()));
        for (String sku : order.onHand().keySet()) {
            Map<String, Integer> fewer = new HashMap<>(order.onHand());
            fewer.remove(sku);
            orders.add(new OrderRequest(order.name(), order.lines(), order.suppliersMax(), order.deliveryCharge(), order.modulePartCharge(), fewer));
        }
        return orders.stream().filter(other -> !other.equals(order)).map(other -> new RandomOrder(that.seed(), that.catalog(), other));
    }

    private static OrderRequest with(OrderRequest order, List<OrderLine> lines) {
        return new OrderRequest(order.name(), lines, order.suppliersMax(), order.deliveryCharge(), order.modulePartCharge(), order.onHand());
    }

    private static Stream<RandomOrder> catalogs(RandomOrder that) {
        Catalog shop = that.catalog();
        List<Catalog> catalogs = new ArrayList<>();
        List<Platform> platforms = List.copyOf(shop.platforms());
        List<Enclosure> enclosures = List.copyOf(shop.enclosures());
        List<Processor> processors = List.copyOf(shop.processors());
        List<MemoryModule> modules = List.copyOf(shop.modules());
        Shrinker.without(platforms).forEach(fewer -> catalogs.add(with(shop, fewer, enclosures, processors, modules)));
        Shrinker.without(enclosures).forEach(fewer -> catalogs.add(with(shop, platforms, fewer, processors, modules)));
        Shrinker.without(processors).forEach(fewer -> catalogs.add(with(shop, platforms, enclosures, fewer, modules)));
        Shrinker.without(modules).forEach(fewer -> catalogs.add(with(shop, platforms, enclosures, processors, fewer)));
        if (!shop.suppliers().own().isEmpty()) {
            catalogs.add(Variations.of(shop, SupplierNames.AS_WRITTEN));
        }
        shop.lots().forEach((sku, lots) -> {
            Shrinker.without(lots).forEach(fewer -> catalogs.add(shop.withLots(replaced(shop, sku, fewer))));
            for (int i = 0; i < lots.size(); i++) {
                for (List<Lot.PriceBreak> breaks : Shrinker.without(lots.get(i).breaks())) {
                    if (!breaks.isEmpty()) {
                        List<Lot> plainer = new ArrayList<>(lots);
                        plainer.set(i, lots.get(i).with(lots.get(i).available(), breaks));
                        catalogs.add(shop.withLots(replaced(shop, sku, plainer)));
                    }
                }
            }
        });
        return catalogs.stream().filter(other -> isWhole(other, that.order())).map(other -> new RandomOrder(that.seed(), other, that.order()));
    }

    private static Catalog with(Catalog shop, List<Platform> platforms, List<Enclosure> enclosures, List<Processor> processors, List<MemoryModule> modules) {
        Catalog fewer = Shops.of(shop.name(), shop.currency(), shop.pricedOn(), shop.labour(), shop.throughputFactors(), new Assortment(platforms, enclosures,
                processors, modules, shop.assortment().drives(), shop.assortment().cards(), shop.assortment().extras()), Map.of(), Stationery.PLAIN);
        Map<String, List<Lot>> lots = new LinkedHashMap<>(shop.lots());
        lots.keySet().removeIf(sku -> fewer.part(sku).isEmpty());
        return Variations.of(fewer.withLots(lots), shop.suppliers());
    }

    private static Map<String, List<Lot>> replaced(Catalog shop, String sku, List<Lot> lots) {
        Map<String, List<Lot>> all = new LinkedHashMap<>(shop.lots());
        all.put(sku, lots);
        return all;
    }

    /** Whether the catalogue has all that the order names. */
    private static boolean isWhole(Catalog shop, OrderRequest order) {
        return !shop.platforms().isEmpty() && Stream.concat(order.onHand().keySet().stream(), order.lines().stream().map(OrderLine::request)
                .flatMap((Request request) -> Stream.of(request.platforms(), request.use(), request.forbid()).flatMap(skus -> skus.stream())))
                .allMatch(sku -> shop.part(sku).isPresent());
    }
}
