package sledwright.planner.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import sledwright.planner.order.Restrictions.Range;

/** Where a mix is in fractions that no order can be, and the two ways out of it. */
final class Branching {

    private static final double WHOLE = 1e-5;

    /** A set of orders is not split into more. */
    private static final int MOST_WAYS = 40;

    private final Market market;

    Branching(Market market) {
        this.market = market;
    }

    /** Restrictions that between them allow every order that these allow, but not the mix; empty where nothing tells the mix from an order. */
    List<Restrictions> split(Restrictions settled, Master.Mix mix) {
        List<Restrictions> ways = onEnclosures(settled, mix);
        ways = ways.isEmpty() ? onSuppliers(settled, mix) : ways;
        ways = ways.isEmpty() ? onPrices(settled, mix) : ways;
        ways = ways.isEmpty() ? onTraits(settled, mix) : ways;
        return ways.isEmpty() ? onExcess(settled, mix) : ways;
    }

    /** Whether the supplier delivers that the mix is least sure of. */
    private static List<Restrictions> onSuppliers(Restrictions settled, Master.Mix mix) {
        return mix.suppliers().entrySet().stream().filter(entry -> !isWhole(entry.getValue()))
                .min(Comparator.comparingDouble(entry -> Math.abs(entry.getValue() - 0.5)))
                .map(entry -> List.of(settled.with(entry.getKey(), true), settled.with(entry.getKey(), false))).orElse(List.of());
    }

    private List<Restrictions> onEnclosures(Restrictions settled, Master.Mix mix) {
        return mix.enclosures().entrySet().stream().filter(entry -> !isWhole(entry.getValue()))
                .min(Comparator.comparingDouble(entry -> Math.abs(entry.getValue() - Math.floor(entry.getValue()) - 0.5)))
                .map(entry -> two(settled.of(entry.getKey()), entry.getValue(), range -> settled.with(entry.getKey(), range))).orElse(List.of());
    }

    /**
     * A lot that the mix takes for cheaper than its units are: it gives at least so many units, or fewer.
     *
     * @param units that it gives in the mix
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
        mix.drawn().forEach((lot, units) -> {
            int parting = units > WHOLE ? Envelope.of(lot, settled.of(lot)).parting(lot, units) : 0;
            if (parting > settled.of(lot).least() && parting <= settled.of(lot).most()) {
                found.add(new Undercut(lot, parting, units));
            }
        });
        found.sort(Comparator.comparingDouble(Undercut::atStake).reversed());
        return found;
    }

    private static List<Restrictions> onPrices(Restrictions settled, Master.Mix mix) {
        return undercuts(settled, mix).stream().findFirst().map(lot -> List.of(lot.reached(settled), lot.missed(settled))).orElse(List.of());
    }

    /** What a number of machines of a line have in common that is furthest from whole; where they stand sooner than their frame, and that than their memory. */
    private List<Restrictions> onTraits(Restrictions settled, Master.Mix mix) {
        Map<Trait, Double> traits = new LinkedHashMap<>();
        for (Column column : mix.columns().keySet()) {
            if (column.machines() == 1) {
                for (int i = 0; i < column.parts().length; i++) {
                    traits.put(new Trait.Takes(column.line(), column.parts()[i], column.units()[i]), 0.0);
                }
                if (column.bay() != null) {
                    traits.put(new Trait.Stands(column.line(), column.bay()), 0.0);
                }
            }
        }
        mix.columns().forEach((column, times) -> traits.replaceAll((trait, sum) -> trait.isOf(column) ? sum + times : sum));
        return traits.entrySet().stream().filter(entry -> !isWhole(entry.getValue()) && settled.of(entry.getKey()).contains(entry.getValue()))
                .min(Comparator.comparingInt((Map.Entry<Trait, Double> entry) -> place(entry.getKey()))
                        .thenComparingDouble(entry -> Math.abs(entry.getValue() - Math.floor(entry.getValue()) - 0.5)))
                .map(entry -> two(settled.of(entry.getKey()), entry.getValue(), range -> settled.with(entry.getKey(), range))).orElse(List.of());
    }

    /** Lots that must give more units of a part than the mix takes: some machine takes more of it, the first one, or the second but not the first... */
    private List<Restrictions> onExcess(Restrictions settled, Master.Mix mix) {
        Map<Integer, Integer> must = new TreeMap<>();
        settled.drawn().forEach((lot, range) -> must.merge(lot.part(), range.least(), Integer::sum));
        for (Map.Entry<Integer, Integer> lots : must.entrySet()) {
            int part = lots.getKey();
            double taken = mix.columns().entrySet().stream().mapToDouble(entry -> entry.getValue() * entry.getKey().unitsOf(part)).sum();
            if (taken < lots.getValue() - WHOLE && !market.isOfEnclosures(part)) {
                return more(settled, mix, part);
            }
        }
        return List.of();
    }

    private List<Restrictions> more(Restrictions settled, Master.Mix mix, int part) {
        List<Restrictions> ways = new ArrayList<>();
        Restrictions others = settled;
        for (int line = 0; line < market.lines().size(); line++) {
            if (market.line(line).uniform() && market.line(line).machines() > 1) {
                return List.of();
            }
            for (int units = 1; units <= Math.min(market.mostInMachine(part), market.available(part, market.poolOf(line))); units++) {
                Trait trait = new Trait.Takes(line, part, units);
                int now = (int) Math.round(mix.columns().entrySet().stream().filter(entry -> trait.isOf(entry.getKey())).mapToDouble(Map.Entry::getValue).sum());
                if (now < Math.min(market.line(line).machines(), settled.of(trait).most())) {
                    ways.add(others.with(trait, settled.of(trait).from(now + 1)));
                    others = others.with(trait, settled.of(trait).upTo(now));
                }
            }
        }
        return ways.size() > MOST_WAYS ? List.of() : ways;
    }

    private int place(Trait trait) {
        return trait instanceof Trait.Takes takes ? market.catalog().module(market.sku(takes.part())).isPresent() ? 2 : 1 : 0;
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
