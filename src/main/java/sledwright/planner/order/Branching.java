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

    /** A lot whose units do not cost what the mix takes them for: they are too few for the price. */
    private List<Restrictions> onPrices(Restrictions settled, Master.Mix mix) {
        Source worst = null;
        int from = 0;
        double most = WHOLE * Scale.ONE;
        for (Map.Entry<Source, Map<Source.Step, Double>> lot : mix.drawn().entrySet()) {
            double units = lot.getValue().values().stream().mapToDouble(Double::doubleValue).sum();
            for (Map.Entry<Source.Step, Double> step : lot.getValue().entrySet()) {
                double saved = step.getValue() * (lot.getKey().steps().get(0).price() - step.getKey().price());
                if (step.getValue() > WHOLE && units < step.getKey().least() - WHOLE && saved > most
                        && settled.of(lot.getKey()).least() < step.getKey().least() && settled.of(lot.getKey()).most() >= step.getKey().least()) {
                    most = saved;
                    worst = lot.getKey();
                    from = step.getKey().least();
                }
            }
        }
        return worst == null ? List.of() : List.of(settled.with(worst, settled.of(worst).from(from)), settled.with(worst, settled.of(worst).upTo(from - 1)));
    }

    /** The part whose use by a line is furthest from a whole number; of the frame of machines sooner than of their memory. */
    private List<Restrictions> onUse(Restrictions settled, Master.Mix mix) {
        Map<Use, Double> used = new HashMap<>();
        mix.columns().forEach((column, times) -> {
            for (int i = 0; i < column.parts().length; i++) {
                used.merge(new Use(column.line(), column.parts()[i]), times * column.units()[i], Double::sum);
            }
        });
        return used.entrySet().stream().filter(entry -> !isWhole(entry.getValue()))
                .min(Comparator.comparing((Map.Entry<Use, Double> entry) -> market.catalog().module(market.sku(entry.getKey().part())).isPresent())
                        .thenComparingDouble(entry -> Math.abs(entry.getValue() - Math.floor(entry.getValue()) - 0.5))
                        .thenComparingInt(entry -> entry.getKey().line()).thenComparingInt(entry -> entry.getKey().part()))
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
