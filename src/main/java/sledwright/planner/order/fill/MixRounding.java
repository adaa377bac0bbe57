package sledwright.planner.order.fill;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sledwright.planner.order.fill.Tally.Step;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.Draws;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.relax.Pricer;
import sledwright.planner.order.relax.RestrictedMaster;

/**
 * Makes whole machines of a mix.
 *
 * @param penalty for each line what a machine that is not delivered counts, scaled
 */
public record MixRounding(Market market, Pricer pricer, long[] penalty) {

    /** The whole part of the master's mix from those who deliver in it, and what is more than half of a machine. */
    public Tally of(RestrictedMaster.Mix mix) {
        boolean[] delivers = new boolean[market.suppliers().size()];
        for (int supplier = 0; supplier < delivers.length; supplier++) {
            delivers[supplier] = !market.isSupplierScarce() || mix.suppliers().containsKey(supplier);
        }
        Tally tally = new Tally(market, new Draws(market, delivers), penalty);
        Map<Column, Double> columns = dealt(mix.columns());
        List<Step> whole = columns.entrySet().stream().map(used -> new Step(used.getKey(), whole(used.getValue())))
                .filter(step -> step.times() > 0).toList();
        // Lots that are sold in numbers may suit all of them and not one.
        if (!tally.change(whole)) {
            for (Step step : whole) {
                int times = step.times();
                while (times > 0 && !tally.change(List.of(new Step(step.column(), times)))) {
                    times--;
                }
            }
        }
        columns.entrySet().stream().sorted(Comparator.comparingDouble(used -> whole(used.getValue()) - used.getValue()))
                .filter(used -> used.getValue() - whole(used.getValue()) > 0.5)
                .forEach(used -> tally.change(List.of(new Step(used.getKey(), 1))));
        return tally;
    }

    /** The machines of a uniform line that stand in several kinds of enclosure by fractions, dealt to these as whole ones. */
    private Map<Column, Double> dealt(Map<Column, Double> mix) {
        Map<Column, Double> dealt = new LinkedHashMap<>(mix);
        for (Column first : mix.keySet()) {
            List<Column> alike = mix.keySet().stream().filter(column -> column.isPlacedOtherwise(first)).toList();
            if (first.machines() > 1 && alike.size() > 1 && dealt.containsKey(first)
                    && isWhole(alike.stream().mapToDouble(mix::get).sum())) {
                int from = 0;
                double upTo = 0;
                for (Column column : alike) {
                    upTo += mix.get(column) * first.machines();
                    int to = (int) Math.round(upTo);
                    dealt.remove(column);
                    if (to > from) {
                        dealt.put(pricer.column(first.line(), first.builds().subList(from, to), column.bay()), 1.0);
                    }
                    from = to;
                }
            }
        }
        return dealt;
    }

    private static boolean isWhole(double times) {
        return Math.abs(times - 1) < 1e-6;
    }

    private static int whole(double times) {
        return (int) Math.floor(times + 1e-6);
    }
}
