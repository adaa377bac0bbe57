package sledwright.planner.order.relax;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import sledwright.generator.time.Deadline;
import sledwright.planner.linear.LinearProgram;
import sledwright.planner.linear.LinearProgram.Row;
import sledwright.planner.linear.LinearProgram.Variable;
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
        private final LinearProgram program = new LinearProgram();
        private final Map<Integer, Row> balances = new LinkedHashMap<>();
        private final List<Row> demands = new ArrayList<>();
        private final Map<Bay, Row> places = new LinkedHashMap<>();
        private final Map<Bay, Row> kilowatts = new LinkedHashMap<>();
        private final Map<Trait.Stands, Row> rooms = new LinkedHashMap<>();
        private final Map<Column, Variable> uses = new LinkedHashMap<>();
        private final Map<Bay, Variable> enclosures = new LinkedHashMap<>();
        private final Map<OfferedLot, List<Variable>> draws = new LinkedHashMap<>();
        private final Map<Integer, Variable> suppliers = new LinkedHashMap<>();
        /** One row for a least and one for a greatest number: the dual value of a row with two bounds does not say which of them holds. */
        private final Map<Row, Trait> traits = new LinkedHashMap<>();
        private final Map<StockCut, Row> cuts = new LinkedHashMap<>();
        private final Map<Integer, Variable> missing = new LinkedHashMap<>();
        private final List<Row> lacking = new ArrayList<>();

        private Row balance(int pool, int part) {
            return balances.computeIfAbsent(pool * market.parts() + part, key -> program.atLeast(0));
        }
    }

    /** The best mix of columns, in which machines may stay undelivered; null where the linear program is not solved. */
    Mix solve(List<Column> columns, List<StockCut> cuts, Deadline deadline) {
        Model model = new Model();
        for (int line = 0; line < market.lines().size(); line++) {
            int machines = market.line(line).machines();
            Row demand = model.program.exactly(machines);
            model.demands.add(demand);
            Variable missing = model.program.variable(machines, penalty[line]);
            demand.add(missing, 1);
            model.missing.put(line, missing);
        }
        lack(model);
        settled.enclosures().keySet().forEach(bay -> stand(model, bay));
        Map<Integer, Row> single = new HashMap<>();
        for (Column column : columns) {
            Variable use = model.program.variable(free ? 0 : ScaledMoney.minor(column.own()));
            model.uses.put(column, use);
            model.demands.get(column.line()).add(use, column.machines());
            int pool = market.poolOf(column.line());
            for (int i = 0; i < column.parts().length; i++) {
                model.balance(pool, column.parts()[i]).add(use, -column.units()[i]);
            }
            if (market.line(column.line()).uniform()) {
                single.computeIfAbsent(column.line(), line -> model.program.atMost(1)).add(use, 1);
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
        return model.program.solve(deadline).map(answer -> mix(model, answer)).orElse(null);
    }

    /** Holds the machines that are not delivered to their number; not at any price, so that there always is a mix. */
    private void lack(Model model) {
        Range range = settled.missing();
        if (range.least() > 0) {
            model.lacking.add(model.program.atLeast(range.least()));
        }
        if (range.most() < Range.ANY.most()) {
            model.lacking.add(model.program.atMost(range.most()).add(model.program.variable(Arrays.stream(penalty).sum()), -1));
        }
        model.lacking.forEach(row -> model.missing.forEach((line, missing) -> row.add(missing, market.line(line).priority())));
    }

    /** Lets every supplier that is not ruled out deliver for its charge, and at most a given number of them. */
    private void addSuppliers(Model model) {
        Row few = model.program.atMost(market.order().suppliersMax().orElse(market.suppliers().size()));
        for (int supplier = 0; supplier < market.suppliers().size(); supplier++) {
            Variable delivers = model.program.variable(settled.suppliers().getOrDefault(supplier, true) ? 1 : 0,
                    free ? 0 : market.order().deliveryCharge()).from(settled.mustDeliver(supplier) ? 1 : 0);
            few.add(delivers, 1);
            model.suppliers.put(supplier, delivers);
        }
    }

    private void house(Model model, Column column, Variable use) {
        Bay bay = column.bay();
        stand(model, bay);
        model.places.get(bay).add(use, -column.machines());
        model.kilowatts.get(bay).add(use, -column.load() / Bay.MICRO_OF_KILO);
        Trait.Stands stands = new Trait.Stands(column.line(), bay);
        int room = market.room(stands.line(), bay);
        // Otherwise a few machines of a line would pay a small share of an enclosure that they need wholly.
        if (room < bay.bays() && !settled.traits().containsKey(stands)) {
            model.rooms.computeIfAbsent(stands, some -> model.program.atLeast(0).add(model.enclosures.get(bay), room))
                    .add(use, -column.machines());
        }
    }

    /** Makes room for enclosures of a kind. */
    private void stand(Model model, Bay bay) {
        if (!model.places.containsKey(bay)) {
            Variable enclosures = model.program.variable(settled.of(bay).most(), 0);
            model.enclosures.put(bay, enclosures);
            if (settled.of(bay).least() > 0) {
                // Not at any price, so that there always is a mix.
                model.program.atLeast(settled.of(bay).least()).add(enclosures, 1)
                        .add(model.program.variable(Arrays.stream(penalty).sum()), 1);
            }
            model.places.put(bay, model.program.atLeast(0));
            model.kilowatts.put(bay, model.program.atLeast(0));
            model.places.get(bay).add(enclosures, bay.bays());
            model.kilowatts.get(bay).add(enclosures, bay.capacity() / Bay.MICRO_OF_KILO);
            model.balance(bay.pool(), market.index().get(bay.enclosure().sku())).add(enclosures, -1);
            model.balance(bay.pool(), market.index().get(bay.supply().sku())).add(enclosures, -bay.supply().count());
        }
    }

    /** Lets the lots of a part fill the balances of every pool that takes it. */
    private void supply(Model model, int part) {
        for (OfferedLot source : market.sources(part)) {
            List<Row> takers = new ArrayList<>();
            for (int pool = 0; pool < source.pools().length; pool++) {
                Row balance = model.balances.get(pool * market.parts() + part);
                if (source.pools()[pool] && balance != null) {
                    takers.add(balance);
                }
            }
            if (!takers.isEmpty() && !settled.isClosed(source)) {
                supply(model, source, takers);
            }
        }
    }

    private void supply(Model model, OfferedLot source, List<Row> takers) {
        Envelope envelope = Envelope.of(source, settled.of(source));
        Variable delivers = model.suppliers.get(source.supplier());
        int from = 0;
        for (Envelope.Piece piece : envelope.pieces()) {
            boolean must = from < envelope.least();
            from += piece.units();
            List<Row> rows = new ArrayList<>();
            if (takers.size() > 1) {
                rows.add(must ? model.program.exactly(piece.units()) : model.program.atMost(piece.units()));
            }
            if (delivers != null) {
                rows.add(model.program.atMost(0).add(delivers, -piece.units()));
            }
            for (Row taker : takers) {
                Variable taken = model.program.variable(piece.units(), free ? 0 : ScaledMoney.minor(piece.price()));
                if (must && takers.size() == 1) {
                    taken.from(piece.units());
                }
                taker.add(taken, 1);
                rows.forEach(row -> row.add(taken, 1));
                model.draws.computeIfAbsent(source, some -> new ArrayList<>()).add(taken);
            }
        }
    }

    /** Holds lines to what is settled about their machines; not at any price, so that there always is a mix. */
    private void hold(Model model, List<Column> columns) {
        double dear = Arrays.stream(penalty).sum();
        settled.traits().forEach((trait, range) -> {
            List<Row> rows = new ArrayList<>();
            if (range.least() > 0) {
                rows.add(model.program.atLeast(range.least()).add(model.program.variable(dear), 1));
            }
            if (range.most() < Range.ANY.most()) {
                rows.add(model.program.atMost(range.most()));
            }
            rows.forEach(row -> {
                columns.stream().filter(trait::isOf).forEach(column -> row.add(model.uses.get(column), 1));
                model.traits.put(row, trait);
            });
        });
    }

    private void cut(Model model, StockCut cut) {
        Row row = model.program.atMost(cut.most());
        model.uses.forEach((column, use) -> {
            long counted = cut.counts(column.line(), cut.part()) ? cut.of(column.unitsOf(cut.part())) : 0;
            if (counted > 0) {
                row.add(use, counted);
            }
        });
        cut.beyond().forEach(lot -> model.draws.getOrDefault(lot, List.of()).forEach(drawn -> row.add(drawn, -1)));
        model.cuts.put(cut, row);
    }

    private Mix mix(Model model, LinearProgram.Answer answer) {
        Map<Column, Double> used = values(answer, model.uses);
        Map<Bay, Double> enclosures = values(answer, model.enclosures);
        Map<OfferedLot, Double> drawn = new LinkedHashMap<>();
        model.draws.forEach((source, taken) -> drawn.put(source, taken.stream().mapToDouble(answer::of).sum()));
        long[][] parts = new long[market.pools().size()][market.parts()];
        model.balances.forEach((key, row) -> parts[key / market.parts()][key % market.parts()] = Math.max(0, dual(answer, row)));
        long[] bay = new long[market.bays().size()];
        long[] kilowatt = new long[bay.length];
        model.places.forEach((some, row) -> bay[some.id()] = Math.max(0, dual(answer, row)));
        model.kilowatts.forEach((some, row) -> kilowatt[some.id()] = Math.max(0, dual(answer, row)));
        Map<Trait, Long> traits = new LinkedHashMap<>();
        model.traits.forEach((row, some) -> traits.merge(some, -dual(answer, row), Long::sum));
        model.rooms.forEach((some, row) -> traits.put(some, Math.max(0, dual(answer, row))));
        Map<StockCut, Long> cuts = new LinkedHashMap<>();
        model.cuts.forEach((cut, row) -> cuts.put(cut, Math.max(0, -dual(answer, row))));
        double[] filling = model.demands.stream().mapToDouble(row -> answer.dual(row) * ScaledMoney.ONE).toArray();
        double missing = values(answer, model.missing).entrySet().stream()
                .mapToDouble(line -> line.getValue() * market.line(line.getKey()).priority()).sum();
        long lacking = model.lacking.stream().mapToLong(row -> dual(answer, row)).sum();
        return new Mix(answer.cost(), used, enclosures, drawn, values(answer, model.suppliers), missing,
                new Dual(new Duals(parts, bay, kilowatt, traits, lacking, cuts), filling));
    }

    private static <T> Map<T, Double> values(LinearProgram.Answer answer, Map<T, Variable> variables) {
        Map<T, Double> values = new LinkedHashMap<>();
        variables.forEach((what, variable) -> {
            double value = answer.of(variable);
            if (value > NOTHING) {
                values.put(what, value);
            }
        });
        return values;
    }

    private static long dual(LinearProgram.Answer answer, Row row) {
        return ScaledMoney.of(answer.dual(row));
    }
}
