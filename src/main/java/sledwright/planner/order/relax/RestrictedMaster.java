package sledwright.planner.order.relax;

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
import sledwright.generator.time.Deadline;
import sledwright.planner.order.market.Bay;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.OfferedLot;
import sledwright.planner.order.market.Range;
import sledwright.planner.order.market.ScaledMoney;

/**
 * The linear program over the columns known so far: fractions of them fill the lines at the least price from lots whose units and
 * price breaks may be taken in fractions, too. Money in minor units.
 */
public final class RestrictedMaster {

    private static final double NOTHING = 1e-9;

    static {
        // Rows that are simplified away would have no dual values, and a scarce part would look as if it were not.
        ExpressionsBasedModel.clearPresolvers();
    }

    private final Market market;
    private final double[] penalty;
    private final boolean free;
    private final Restrictions settled;

    /**
     * @param penalty for each line what a machine that is not delivered counts, scaled
     * @param free    whether parts cost nothing, so that only what is delivered counts
     */
    public RestrictedMaster(Market market, long[] penalty, boolean free, Restrictions settled) {
        this.market = market;
        this.settled = settled;
        this.penalty = Arrays.stream(penalty).mapToDouble(ScaledMoney::minor).toArray();
        this.free = free;
    }

    /**
     * What the linear program says.
     *
     * @param cost       minor units
     * @param columns    how often each column is used, where it is
     * @param enclosures how many there are of each kind, where there are any
     * @param drawn      units from each lot
     * @param suppliers  how far each delivers, where that matters
     * @param missing    machines that are not delivered, each counted by its line's priority
     */
    public record Mix(double cost, Map<Column, Double> columns, Map<Bay, Double> enclosures, Map<OfferedLot, Double> drawn,
            Map<Integer, Double> suppliers, double missing, Dual dual) {

        public Duals duals() {
            return dual.units;
        }

        /** What a column's machines cost where it is not used, scaled. */
        double filling(Column column) {
            return dual.filling[column.line()] * column.machines();
        }
    }

    /**
     * The dual values.
     *
     * @param filling for each line what one more machine costs, scaled
     */
    record Dual(Duals units, double[] filling) {
    }

    private final class Model {
        private final ExpressionsBasedModel model = new ExpressionsBasedModel();
        private final Map<Integer, Expression> balances = new LinkedHashMap<>();
        private final List<Expression> demands = new ArrayList<>();
        private final Map<Bay, Expression> places = new LinkedHashMap<>();
        private final Map<Bay, Expression> kilowatts = new LinkedHashMap<>();
        private final Map<Trait.Stands, Expression> rooms = new LinkedHashMap<>();
        private final Map<Column, Variable> uses = new LinkedHashMap<>();
        private final Map<Bay, Variable> enclosures = new LinkedHashMap<>();
        private final Map<OfferedLot, List<Variable>> draws = new LinkedHashMap<>();
        private final Map<Integer, Variable> suppliers = new LinkedHashMap<>();
        private final Map<Trait, Expression> fewest = new LinkedHashMap<>();
        private final Map<Trait, Expression> most = new LinkedHashMap<>();
        private final Map<StockCut, Expression> cuts = new LinkedHashMap<>();
        private final Map<Integer, Variable> missing = new LinkedHashMap<>();
        private Expression lackingLeast;
        private Expression lackingMost;
        private int number;

        private Expression row(String kind) {
            return model.addExpression(kind + number++);
        }

        private Variable variable() {
            return model.addVariable("v" + number++).lower(0);
        }

        private Expression balance(int pool, int part) {
            return balances.computeIfAbsent(pool * market.parts() + part, key -> row("balance").lower(0));
        }
    }

    /** The best mix of columns, in which machines may stay undelivered; null where the linear program is not solved. */
    Mix solve(List<Column> columns, List<StockCut> cuts, Deadline deadline) {
        Model model = new Model();
        for (int line = 0; line < market.lines().size(); line++) {
            int machines = market.line(line).machines();
            Expression demand = model.row("demand").level(machines);
            model.demands.add(demand);
            Variable missing = model.variable().upper(machines).weight(penalty[line]);
            demand.set(missing, 1);
            model.missing.put(line, missing);
        }
        lack(model);
        settled.enclosures().keySet().forEach(bay -> stand(model, bay));
        Map<Integer, Expression> single = new HashMap<>();
        for (Column column : columns) {
            Variable use = model.variable().weight(free ? 0 : ScaledMoney.minor(column.own()));
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
        if (free ? market.order().suppliersMax().isPresent() : market.isSupplierScarce()) {
            addSuppliers(model);
        }
        TreeSet<Integer> parts = new TreeSet<>();
        model.balances.keySet().forEach(key -> parts.add(key % market.parts()));
        parts.forEach(part -> supply(model, part));
        hold(model, columns);
        cuts.forEach(cut -> cut(model, cut));
        model.model.options.time_abort = Math.max(1, deadline.leftMillis());
        model.model.options.time_suffice = model.model.options.time_abort;
        Optimisation.Result result = model.model.minimise();
        return mix(model, result);
    }

    /** Holds the machines that are not delivered to their number; not at any price, so that there always is a mix. */
    private void lack(Model model) {
        Range range = settled.missing();
        // One row for each: the dual value of a row with two bounds does not say which of them holds.
        if (range.least() > 0) {
            model.lackingLeast = model.row("lacking").lower(range.least());
            model.missing.forEach((line, missing) -> model.lackingLeast.set(missing, market.line(line).priority()));
        }
        if (range.most() < Range.ANY.most()) {
            model.lackingMost = model.row("lacking").upper(range.most());
            model.lackingMost.set(model.variable().weight(Arrays.stream(penalty).sum()), -1);
            model.missing.forEach((line, missing) -> model.lackingMost.set(missing, market.line(line).priority()));
        }
    }

    /** Lets every supplier that is not ruled out deliver for its charge, and at most a given number of them. */
    private void addSuppliers(Model model) {
        Expression few = model.row("few").upper(market.order().suppliersMax().orElse(market.suppliers().size()));
        for (int supplier = 0; supplier < market.suppliers().size(); supplier++) {
            Variable delivers = model.variable().lower(settled.mustDeliver(supplier) ? 1 : 0).upper(settled.suppliers()
                    .getOrDefault(supplier, true) ? 1 : 0)
                    .weight(free ? 0 : market.order().deliveryCharge());
            few.set(delivers, 1);
            model.suppliers.put(supplier, delivers);
        }
    }

    private void house(Model model, Column column, Variable use) {
        Bay bay = column.bay();
        stand(model, bay);
        model.places.get(bay).set(use, -column.machines());
        model.kilowatts.get(bay).set(use, -column.load() / Bay.MICRO_OF_KILO);
        Trait.Stands stands = new Trait.Stands(column.line(), bay);
        int room = market.room(stands.line(), bay);
        // Otherwise a few machines of a line would pay a small share of an enclosure that they need wholly.
        if (room < bay.bays() && !settled.traits().containsKey(stands)) {
            model.rooms.computeIfAbsent(stands, some -> model.row("room").lower(0).set(model.enclosures.get(bay), room))
                    .set(use, -column.machines());
        }
    }

    /** Makes room for enclosures of a kind. */
    private void stand(Model model, Bay bay) {
        if (!model.places.containsKey(bay)) {
            Variable enclosures = model.variable().upper(settled.of(bay).most());
            model.enclosures.put(bay, enclosures);
            if (settled.of(bay).least() > 0) {
                // Not at any price, so that there always is a mix.
                model.row("fewest").lower(settled.of(bay).least()).set(enclosures, 1)
                        .set(model.variable().weight(Arrays.stream(penalty).sum()), 1);
            }
            model.places.put(bay, model.row("place").lower(0));
            model.kilowatts.put(bay, model.row("watt").lower(0));
            model.places.get(bay).set(enclosures, bay.bays());
            model.kilowatts.get(bay).set(enclosures, bay.capacity() / Bay.MICRO_OF_KILO);
            model.balance(bay.pool(), market.index().get(bay.enclosure().sku())).set(enclosures, -1);
            model.balance(bay.pool(), market.index().get(bay.supply().sku())).set(enclosures, -bay.supply().count());
        }
    }

    /** Lets the lots of a part fill the balances of every pool that takes it. */
    private void supply(Model model, int part) {
        for (OfferedLot source : market.sources(part)) {
            List<Expression> takers = new ArrayList<>();
            for (int pool = 0; pool < source.pools().length; pool++) {
                Expression balance = model.balances.get(pool * market.parts() + part);
                if (source.pools()[pool] && balance != null) {
                    takers.add(balance);
                }
            }
            if (!takers.isEmpty() && !settled.isClosed(source)) {
                supply(model, source, takers);
            }
        }
    }

    private void supply(Model model, OfferedLot source, List<Expression> takers) {
        Envelope envelope = Envelope.of(source, settled.of(source));
        Variable delivers = model.suppliers.get(source.supplier());
        int from = 0;
        for (Envelope.Piece piece : envelope.pieces()) {
            boolean must = from < envelope.least();
            from += piece.units();
            List<Expression> rows = new ArrayList<>();
            if (takers.size() > 1) {
                rows.add(must ? model.row("piece").level(piece.units()) : model.row("piece").upper(piece.units()));
            }
            if (delivers != null) {
                rows.add(model.row("given").upper(0).set(delivers, -piece.units()));
            }
            for (Expression taker : takers) {
                Variable taken = model.variable().upper(piece.units()).weight(free ? 0 : ScaledMoney.minor(piece.price()));
                if (must && takers.size() == 1) {
                    taken.lower(piece.units());
                }
                taker.set(taken, 1);
                rows.forEach(row -> row.set(taken, 1));
                model.draws.computeIfAbsent(source, some -> new ArrayList<>()).add(taken);
            }
        }
    }

    /** Holds lines to what is settled about their machines; not at any price, so that there always is a mix. */
    private void hold(Model model, List<Column> columns) {
        double dear = Arrays.stream(penalty).sum();
        settled.traits().forEach((trait, range) -> {
            if (range.least() > 0) {
                Expression row = model.row("least").lower(range.least());
                row.set(model.variable().weight(dear), 1);
                columns.stream().filter(trait::isOf).forEach(column -> row.set(model.uses.get(column), 1));
                model.fewest.put(trait, row);
            }
            if (range.most() < Range.ANY.most()) {
                Expression row = model.row("most").upper(range.most());
                columns.stream().filter(trait::isOf).forEach(column -> row.set(model.uses.get(column), 1));
                model.most.put(trait, row);
            }
        });
    }

    private void cut(Model model, StockCut cut) {
        Expression row = model.row("cut").upper(cut.most());
        model.uses.forEach((column, use) -> {
            long counted = cut.counts(column.line(), cut.part()) ? cut.of(column.unitsOf(cut.part())) : 0;
            if (counted > 0) {
                row.set(use, counted);
            }
        });
        cut.beyond().forEach(lot -> model.draws.getOrDefault(lot, List.of()).forEach(drawn -> row.set(drawn, -1)));
        model.cuts.put(cut, row);
    }

    private Mix mix(Model model, Optimisation.Result result) {
        if (!result.getState().isOptimal()) {
            return null;
        }
        Map<Column, Double> used = values(model, result, model.uses);
        Map<Bay, Double> enclosures = values(model, result, model.enclosures);
        Map<OfferedLot, Double> drawn = new LinkedHashMap<>();
        model.draws.forEach((source, taken) -> drawn.put(source,
                taken.stream().mapToDouble(some -> result.doubleValue(model.model.indexOf(some))).sum()));
        Map<String, Double> duals = new HashMap<>();
        result.getMatchedMultipliers().forEach(one -> {
            if (one.getKey().left() instanceof Expression row) {
                duals.merge(row.getName(), one.doubleValue(), Double::sum);
            }
        });
        long[][] parts = new long[market.pools().size()][market.parts()];
        model.balances.forEach((key, row) -> parts[key / market.parts()][key % market.parts()] = Math.max(0, dual(duals, row)));
        long[] bay = new long[market.bays().size()];
        long[] kilowatt = new long[bay.length];
        model.places.forEach((some, row) -> bay[some.id()] = Math.max(0, dual(duals, row)));
        model.kilowatts.forEach((some, row) -> kilowatt[some.id()] = Math.max(0, dual(duals, row)));
        Map<Trait, Long> traits = new LinkedHashMap<>();
        model.fewest.forEach((some, row) -> traits.merge(some, -dual(duals, row), Long::sum));
        model.most.forEach((some, row) -> traits.merge(some, dual(duals, row), Long::sum));
        model.rooms.forEach((some, row) -> traits.put(some, Math.max(0, dual(duals, row))));
        Map<StockCut, Long> cuts = new LinkedHashMap<>();
        model.cuts.forEach((cut, row) -> cuts.put(cut, Math.max(0, dual(duals, row))));
        double[] filling = model.demands.stream().mapToDouble(row -> -duals.getOrDefault(row.getName(), 0.0) * ScaledMoney.ONE).toArray();
        double missing = values(model, result, model.missing).entrySet().stream()
                .mapToDouble(line -> line.getValue() * market.line(line.getKey()).priority()).sum();
        return new Mix(result.getValue(), used, enclosures, drawn, values(model, result, model.suppliers), missing,
                new Dual(new Duals(parts, bay, kilowatt, traits, missing(model, duals), cuts), filling));
    }

    private static long missing(Model model, Map<String, Double> duals) {
        return (model.lackingLeast == null ? 0 : dual(duals, model.lackingLeast))
                - (model.lackingMost == null ? 0 : dual(duals, model.lackingMost));
    }

    private static <T> Map<T, Double> values(Model model, Optimisation.Result result, Map<T, Variable> variables) {
        Map<T, Double> values = new LinkedHashMap<>();
        variables.forEach((what, variable) -> {
            double value = result.doubleValue(model.model.indexOf(variable));
            if (value > NOTHING) {
                values.put(what, value);
            }
        });
        return values;
    }

    private static long dual(Map<String, Double> duals, Expression row) {
        return ScaledMoney.of(duals.getOrDefault(row.getName(), 0.0));
    }
}
