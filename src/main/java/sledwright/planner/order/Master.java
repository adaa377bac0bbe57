package sledwright.planner.order;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;

/**
 * The linear program over the columns known so far: fractions of them fill the lines at the least price from lots whose units and
 * price breaks may be taken in fractions, too. Money in minor units.
 */
final class Master {

    private static final double NOTHING = 1e-9;

    private final Market market;
    private final boolean[] open;
    private final double[] penalty;
    private final boolean free;

    /**
     * @param open    for each supplier whether the order may draw on it
     * @param penalty for each line what a machine that is not delivered counts, scaled
     * @param free    whether parts cost nothing, so that only what is delivered counts
     */
    Master(Market market, boolean[] open, long[] penalty, boolean free) {
        this.market = market;
        this.open = open;
        this.penalty = Arrays.stream(penalty).mapToDouble(Scale::minor).toArray();
        this.free = free;
    }

    /**
     * What the linear program says.
     *
     * @param cost    minor units
     * @param columns how often each column is used, where it is
     * @param filling for each line what one more machine costs, scaled
     */
    record Mix(double cost, Map<Column, Double> columns, Prices prices, double[] filling) {
    }

    private final class Model {
        private final ExpressionsBasedModel model = new ExpressionsBasedModel();
        private final Map<Integer, Expression> balances = new HashMap<>();
        private final List<Expression> demands = new ArrayList<>();
        private final Map<Bay, Expression> places = new LinkedHashMap<>();
        private final Map<Bay, Expression> watts = new LinkedHashMap<>();
        private final Map<Column, Variable> uses = new LinkedHashMap<>();
        private final Map<String, Expression> byName = new HashMap<>();
        private int number;

        private Expression row(String kind) {
            String name = kind + number++;
            Expression row = model.addExpression(name);
            byName.put(name, row);
            return row;
        }

        private Variable variable() {
            return model.addVariable("v" + number++).lower(0);
        }

        private Expression balance(int pool, int part) {
            return balances.computeIfAbsent(pool * market.parts() + part, key -> row("balance").lower(0));
        }
    }

    /** The best mix of columns; there is always one, since machines may stay undelivered. */
    Mix solve(List<Column> columns) {
        Model model = new Model();
        for (int line = 0; line < market.lines().size(); line++) {
            int machines = market.line(line).machines();
            Expression demand = model.row("demand").level(machines);
            model.demands.add(demand);
            demand.set(model.variable().upper(machines).weight(penalty[line]), 1);
        }
        Map<Integer, Expression> single = new HashMap<>();
        for (Column column : columns) {
            Variable use = model.variable().weight(free ? 0 : Scale.minor(column.own()));
            model.uses.put(column, use);
            model.demands.get(column.line()).set(use, column.machines());
            int pool = market.poolOf(column.line());
            for (int i = 0; i < column.parts().length; i++) {
                model.balance(pool, column.parts()[i]).set(use, -column.units()[i]);
            }
            if (market.line(column.line()).uniform()) {
                single.computeIfAbsent(column.line(), line -> model.row("single").upper(1)).set(use, 1);
            }
            if (column.bay() != null) {
                house(model, column, use);
            }
        }
        TreeSet<Integer> parts = new TreeSet<>();
        model.balances.keySet().forEach(key -> parts.add(key % market.parts()));
        parts.forEach(part -> supply(model, part));
        Optimisation.Result result = model.model.minimise();
        return mix(model, result);
    }

    private void house(Model model, Column column, Variable use) {
        Bay bay = column.bay();
        if (!model.places.containsKey(bay)) {
            Variable enclosures = model.variable();
            model.places.put(bay, model.row("place").lower(0));
            model.watts.put(bay, model.row("watt").lower(0));
            model.places.get(bay).set(enclosures, bay.bays());
            model.watts.get(bay).set(enclosures, bay.capacity() / (double) Bay.MICRO);
            model.balance(bay.pool(), market.index().get(bay.enclosure().sku())).set(enclosures, -1);
            model.balance(bay.pool(), market.index().get(bay.supply().sku())).set(enclosures, -bay.supply().count());
        }
        model.places.get(bay).set(use, -column.machines());
        model.watts.get(bay).set(use, -column.load() / (double) Bay.MICRO);
    }

    /** Lets the lots of a part fill the balances of every pool that takes it. */
    private void supply(Model model, int part) {
        for (Source source : market.sources(part)) {
            if (source.supplier() >= 0 && !open[source.supplier()]) {
                continue;
            }
            List<Expression> takers = new ArrayList<>();
            for (int pool = 0; pool < source.pools().length; pool++) {
                Expression balance = model.balances.get(pool * market.parts() + part);
                if (source.pools()[pool] && balance != null) {
                    takers.add(balance);
                }
            }
            if (takers.isEmpty()) {
                continue;
            }
            boolean plain = source.isPlain();
            Expression one = plain ? null : model.row("step").upper(1);
            for (Source.Step step : source.steps()) {
                Expression most = null;
                Expression least = null;
                if (!plain) {
                    Variable chosen = model.variable().upper(1);
                    one.set(chosen, 1);
                    most = model.row("most").upper(0);
                    most.set(chosen, -step.most());
                    least = model.row("least").lower(0);
                    least.set(chosen, -step.least());
                } else if (takers.size() > 1) {
                    most = model.row("most").upper(step.most());
                }
                for (Expression taker : takers) {
                    Variable taken = model.variable().upper(step.most()).weight(free ? 0 : Scale.minor(step.price()));
                    taker.set(taken, 1);
                    if (most != null) {
                        most.set(taken, 1);
                    }
                    if (least != null) {
                        least.set(taken, 1);
                    }
                }
            }
        }
    }

    private Mix mix(Model model, Optimisation.Result result) {
        Map<Column, Double> used = new LinkedHashMap<>();
        model.uses.forEach((column, use) -> {
            double value = result.doubleValue(model.model.indexOf(use));
            if (value > NOTHING) {
                used.put(column, value);
            }
        });
        Map<String, Double> duals = new HashMap<>();
        result.getMatchedMultipliers().forEach(one -> {
            if (one.getKey().left() instanceof Expression row) {
                duals.merge(row.getName(), one.doubleValue(), Double::sum);
            }
        });
        long[][] parts = new long[market.pools().size()][market.parts()];
        model.balances.forEach((key, row) -> parts[key / market.parts()][key % market.parts()] = dual(duals, row));
        long[] bay = new long[market.bays().size()];
        long[] watt = new long[bay.length];
        model.places.forEach((some, row) -> bay[some.id()] = dual(duals, row));
        model.watts.forEach((some, row) -> watt[some.id()] = dual(duals, row));
        double[] filling = model.demands.stream().mapToDouble(row -> duals.getOrDefault(row.getName(), 0.0) * Scale.ONE).toArray();
        return new Mix(result.getValue(), used, new Prices(parts, bay, watt), filling);
    }

    private static long dual(Map<String, Double> duals, Expression row) {
        return Math.max(0, Scale.of(duals.getOrDefault(row.getName(), 0.0)));
    }
}
