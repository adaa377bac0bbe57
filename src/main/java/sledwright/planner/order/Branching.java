package sledwright.planner.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import sledwright.planner.order.Restrictions.Range;
import sledwright.planner.order.Restrictions.Use;

/** Where a mix is in fractions that no order can be, and the two ways out of it. */
final class Branching {

    private static final double WHOLE = 1e-5;

    private final Market market;

    Branching(Market market) {
        this.market = market;
    }

    /** Restrictions that between them allow every order that these allow, but not the mix; empty where nothing tells the mix from an order. */
    List<Restrictions> split(Restrictions settled, Master.Mix mix) {
        List<Restrictions> ways = onEnclosures(settled, mix);
        ways = ways.isEmpty() ? onSuppliers(settled, mix) : ways;
        ways = ways.isEmpty() ? onPrices(settled, mix) : ways;
        return ways.isEmpty() ? onUse(settled, mix) : ways;
    }

    /** Whether the supplier that gives most, and that costs something to have, delivers. */
    private List<Restrictions> onSuppliers(Restrictions settled, Master.Mix mix) {
        if (market.order().deliveryCharge() == 0 && market.order().suppliersMax().isEmpty()) {
            return List.of();
        }
        Map<Integer, Double> given = new TreeMap<>();
        mix.drawn().forEach((source, steps) -> {
            if (source.supplier() >= 0 && !settled.suppliers().containsKey(source.supplier())) {
                given.merge(source.supplier(), steps.entrySet().stream().mapToDouble(step -> step.getValue() * step.getKey().price()).sum(), Double::sum);
            }
        });
        return given.entrySet().stream().filter(entry -> entry.getValue() > WHOLE).max(Map.Entry.comparingByValue())
                .map(entry -> List.of(settled.with(entry.getKey(), true), settled.with(entry.getKey(), false))).orElse(List.of());
    }

    private List<Restrictions> onEnclosures(Restrictions settled, Master.Mix mix) {
        return mix.enclosures().entrySet().stream().filter(entry -> !isWhole(entry.getValue()))
                .min(Comparator.comparingDouble(entry -> Math.abs(entry.getValue() - Math.floor(entry.getValue()) - 0.5)))
                .map(entry -> two(settled.of(entry.getKey()), entry.getValue(), range -> settled.with(entry.getKey(), range))).orElse(List.of());
    }

    /**
     * A lot that the mix draws on at several prices at once, or at a price for which it takes too few: it gives at least so many units, or fewer.
     *
     * @param units at stake
     */
    record Undercut(Source lot, int least, double units) {

        Restrictions reached(Restrictions settled) {
            return settled.with(lot, settled.of(lot).from(least));
        }

        Restrictions missed(Restrictions settled) {
            return settled.with(lot, settled.of(lot).upTo(least - 1));
        }

        private double atStake() {
            long[] prices = lot.steps().stream().mapToLong(Source.Step::price).sorted().toArray();
            return units * (prices[prices.length - 1] - prices[0]);
        }
    }

    /** The lots that the mix undercuts, those by which it can save most first. */
    static List<Undercut> undercuts(Restrictions settled, Master.Mix mix) {
        List<Undercut> found = new ArrayList<>();
        mix.drawn().forEach((lot, steps) -> {
            List<Source.Step> used = steps.entrySet().stream().filter(step -> step.getValue() > WHOLE).map(Map.Entry::getKey).toList();
            double units = steps.values().stream().mapToDouble(Double::doubleValue).sum();
            int least = used.stream().mapToInt(Source.Step::least).max().orElse(0);
            if (least > settled.of(lot).least() && least <= settled.of(lot).most() && (used.size() > 1 || units < least - WHOLE)) {
                found.add(new Undercut(lot, least, units));
            }
        });
        found.sort(Comparator.comparingDouble(Undercut::atStake).reversed());
        return found;
    }

    private static List<Restrictions> onPrices(Restrictions settled, Master.Mix mix) {
        return undercuts(settled, mix).stream().findFirst().map(lot -> List.of(lot.reached(settled), lot.missed(settled))).orElse(List.of());
    }

    /** The part of which machines of a line take more or less, furthest from a whole number of them; of the frame sooner than of the memory. */
    private List<Restrictions> onUse(Restrictions settled, Master.Mix mix) {
        Map<Use, Double> used = new HashMap<>();
        for (Column column : mix.columns().keySet()) {
            for (int i = 0; i < column.parts().length && column.machines() == 1; i++) {
                used.put(new Use(column.line(), column.parts()[i], column.units()[i]), 0.0);
            }
        }
        mix.columns().forEach((column, times) -> used.replaceAll((use, sum) -> use.isOf(column) ? sum + times : sum));
        return used.entrySet().stream().filter(entry -> !isWhole(entry.getValue()))
                .min(Comparator.comparing((Map.Entry<Use, Double> entry) -> market.catalog().module(market.sku(entry.getKey().part())).isPresent())
                        .thenComparingDouble(entry -> Math.abs(entry.getValue() - Math.floor(entry.getValue()) - 0.5))
                        .thenComparingInt(entry -> entry.getKey().line()).thenComparingInt(entry -> entry.getKey().part())
                        .thenComparingInt(entry -> entry.getKey().least()))
                .map(entry -> two(settled.of(entry.getKey()), entry.getValue(), range -> settled.with(entry.getKey(), range))).orElse(List.of());
    }

    private static List<Restrictions> two(Range range, double value, Function<Range, Restrictions> with) {
        int floor = (int) Math.floor(value);
        List<Restrictions> ways = new ArrayList<>();
        for (Range some : List.of(range.upTo(floor), range.from(floor + 1))) {
            if (!some.isEmpty()) {
                ways.add(with.apply(some));
            }
        }
        return ways;
    }

    private static boolean isWhole(double value) {
        return Math.abs(value - Math.round(value)) < WHOLE;
    }
}
