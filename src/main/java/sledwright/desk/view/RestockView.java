package sledwright.desk.view;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.restock.Levels;
import sledwright.restock.RestockPlan;
import sledwright.restock.RestockPlan.PartOutlook;

/**
 * A restocking plan as it is shown.
 *
 * @param seed   of the courses that it was made and tried on
 * @param levels reorder levels; empty: not asked for
 */
public record RestockView(RestockPlan plan, Catalog shop, long seed, List<Levels.Level> levels) {

    public RestockView {
        levels = List.copyOf(levels);
    }

    public String currency() {
        return shop.currency().getCurrencyCode();
    }

    /** A mean of minor units as people write it, in units of the currency. */
    public BigDecimal amount(double minor) {
        return shop.amount(Math.round(minor));
    }

    public static String percent(double share) {
        return BigDecimal.valueOf(100 * share).setScale(1, RoundingMode.HALF_UP) + " %";
    }

    public static BigDecimal tenths(double figure) {
        return BigDecimal.valueOf(figure).setScale(1, RoundingMode.HALF_UP);
    }

    public String description(String sku) {
        return shop.part(sku).orElseThrow().description();
    }

    /** Parts that the plan buys, uses or would pay for one more of. */
    public List<PartOutlook> wanted() {
        return plan.parts().stream().filter(part -> part.units().bought() > 0 || part.units().used() > 0)
                .sorted(Comparator.comparingDouble((PartOutlook part) -> -(part.value().oneMore() - part.value().worth()))
                        .thenComparing(PartOutlook::sku))
                .toList();
    }

    /** The purchases by supplier, the dearest order first. */
    public List<PurchaseOrder> orders() {
        Map<String, List<RestockPlan.Buy>> bySupplier = plan.buys().stream()
                .collect(Collectors.groupingBy(buy -> Lot.supplierKey(buy.offer().supplier()), TreeMap::new, Collectors.toList()));
        return bySupplier.values().stream().map(buys -> new PurchaseOrder(buys.get(0).offer().supplier(),
                shop.suppliers().isOwn(buys.get(0).offer().supplier()), buys))
                .sorted(Comparator.comparingLong((PurchaseOrder order) -> -order.total())).toList();
    }

    /** Dead stock, what loses the most first. */
    public List<PartOutlook> dead() {
        return plan.dead().stream()
                .sorted(Comparator.comparingDouble((PartOutlook part) -> -part.value().lost()).thenComparing(PartOutlook::sku)).toList();
    }
}
