package sledwright.oracle;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearArgument;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import sledwright.domain.Catalog;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.oracle.EveryMachine.Machine;

/**
 * An order as a model of whole numbers for an outside solver (CP-SAT of OR-Tools): how many of each valid machine a line gets, how many
 * units each price of each lot gives to each set of lines, who delivers, and which sled stands in which enclosure. Money in
 * ten-thousandths of a minor unit.
 */
final class CpSatOrder {

    static final long SCALE = 10_000;

    /**
     * What the solver says.
     *
     * @param value null: none found
     * @param bound there is nothing better
     */
    record Answer(Long value, double bound, boolean proved, boolean impossible) {
    }

    /**
     * How long the solver tries.
     *
     * @param deterministic in its own units, which do not depend on the machine's speed; very roughly seconds
     * @param seconds       wall-clock time
     */
    record Effort(double deterministic, double seconds) {

        static Effort deterministic(double units) {
            return new Effort(units, Double.POSITIVE_INFINITY);
        }

        static Effort seconds(Duration time) {
            return new Effort(Double.POSITIVE_INFINITY, time.toMillis() / 1000.0);
        }
    }

    /** A kind of sled that enclosures can't tell apart. */
    private record Sled(int pool, String platform, boolean lowLine, Set<String> forbid, long microwatts) {
    }

    private final CpModel model = new CpModel();
    private final RandomOrder that;
    private final OrderRequest order;
    private final List<Limits> pools = new ArrayList<>();
    private final Map<String, Map<Long, LinearExprBuilder>> needs = new TreeMap<>();
    private final Map<String, BoolVar> suppliers = new TreeMap<>();
    private final LinearExprBuilder cost = LinearExpr.newBuilder();
    private final LinearExprBuilder weight = LinearExpr.newBuilder();
    private final Map<Sled, List<LinearArgument>> sleds = new LinkedHashMap<>();

    private CpSatOrder(RandomOrder that, List<List<Machine>> machines, boolean whole) {
        Loader.loadNativeLibraries();
        this.that = that;
        order = that.order();
        for (int line = 0; line < machines.size(); line++) {
            line(order.lines().get(line), machines.get(line), whole);
        }
        new CpSatEnclosures(model, that.catalog(), this::need).house(sleds.entrySet().stream().map(sled -> new CpSatEnclosures.Sleds(sled.getKey().pool(),
                sled.getKey().platform(), sled.getKey().lowLine(), sled.getKey().forbid(), sled.getKey().microwatts(), LinearExpr.sum(sled.getValue().toArray(LinearArgument[]::new)))).toList(),
                pools.size(), order.machines());
        needs.forEach(this::draw);
        order.suppliersMax().ifPresent(most -> model.addLessOrEqual(LinearExpr.sum(suppliers.values().toArray(LinearArgument[]::new)), most));
        suppliers.values().forEach(delivers -> cost.addTerm(delivers, order.deliveryCharge() * SCALE));
    }

    /** The least cost of the whole order: price, less worth, with what further module part numbers count. */
    static Answer cheapest(RandomOrder that, List<List<Machine>> machines, Effort effort) {
        CpSatOrder model = new CpSatOrder(that, machines, true);
        model.model.minimize(model.cost.build());
        return model.solve(effort);
    }

    /** The least cost of an order that delivers so much, by the priority of its machines. */
    static Answer cheapestOf(RandomOrder that, List<List<Machine>> machines, long weight, Effort effort) {
        CpSatOrder model = new CpSatOrder(that, machines, false);
        model.model.addEquality(model.weight.build(), weight);
        model.model.minimize(model.cost.build());
        return model.solve(effort);
    }

    /** The most that can be delivered, by the priority of its machines. */
    static Answer most(RandomOrder that, List<List<Machine>> machines, Effort effort) {
        CpSatOrder model = new CpSatOrder(that, machines, false);
        model.model.maximize(model.weight.build());
        return model.solve(effort);
    }

    private Answer solve(Effort effort) {
        CpSolver solver = new CpSolver();
        solver.getParameters().setNumWorkers(1).setRandomSeed(1).setMaxDeterministicTime(effort.deterministic).setMaxTimeInSeconds(effort.seconds);
        CpSolverStatus status = solver.solve(model);
        return switch (status) {
            case OPTIMAL, FEASIBLE -> new Answer(Math.round(solver.objectiveValue()), solver.bestObjectiveBound(), status == CpSolverStatus.OPTIMAL, false);
            case INFEASIBLE -> new Answer(null, Double.NaN, true, true);
            case UNKNOWN -> new Answer(null, solver.bestObjectiveBound(), false, false);
            default -> throw new IllegalStateException("the solver ends with %s: %s".formatted(status, model.validate()));
        };
    }

    private int pool(Limits limit) {
        Limits accepts = new Limits(Limits.NONE.price(), Limits.NONE.powerW(), limit.leadDays(), Limits.NONE.inletC(), 0, Limits.NONE.mainsV(), limit.conditions())
                .withBy(limit.by());
        if (!pools.contains(accepts)) {
            pools.add(accepts);
        }
        return pools.indexOf(accepts);
    }

    private void line(OrderLine line, List<Machine> machines, boolean whole) {
        int pool = pool(line.request().limit());
        LinearExprBuilder delivered = LinearExpr.newBuilder();
        Map<List<Object>, BoolVar> alike = new HashMap<>();
        Map<String, BoolVar> modules = new TreeMap<>();
        for (Machine machine : machines) {
            IntVar times = model.newIntVar(0, line.machines(), line.name());
            delivered.add(times);
            if (line.uniform()) {
                BoolVar chosen = alike.computeIfAbsent(machine.sameness(), key -> model.newBoolVar("alike"));
                model.addLessOrEqual(times, LinearExpr.term(chosen, line.machines()));
            }
            if (line.request().require().populated().onePart()) {
                machine.build().modules().values().stream().map(MemoryModule::sku).distinct().forEach(sku -> model.addLessOrEqual(times,
                        LinearExpr.term(modules.computeIfAbsent(sku, key -> model.newBoolVar(key)), line.machines())));
            }
            machine.parts().forEach((sku, units) -> need(sku, 1L << pool, LinearExpr.term(times, units)));
            cost.addTerm(times, SCALE * (machine.beside() + order.modulePartCharge() * (machine.moduleParts() - 1)) - Math.round(SCALE * machine.worth()));
            if (line.request().equipment().enclosure() == EnclosureFrom.NEW && that.catalog().enclosures().stream().anyMatch(any -> any.takes().contains(machine.build().platform().sku()))) {
                boolean lowLine = line.request().limit().mainsV().isPresent() && line.request().limit().mainsV().getAsDouble() < 180;
                sleds.computeIfAbsent(new Sled(pool, machine.build().platform().sku(), lowLine, line.request().forbid(), machine.microwatts()), key -> new ArrayList<>()).add(times);
            }
        }
        if (line.uniform()) {
            model.addAtMostOne(alike.values().toArray(Literal[]::new));
        }
        model.addAtMostOne(modules.values().toArray(Literal[]::new));
        LinearExpr all = delivered.build();
        if (whole) {
            model.addEquality(all, line.machines());
        } else {
            model.addLessOrEqual(all, line.machines());
        }
        weight.addTerm(all, line.priority());
    }

    private void need(String sku, long set, LinearArgument units) {
        needs.computeIfAbsent(sku, key -> new TreeMap<>()).computeIfAbsent(set, key -> LinearExpr.newBuilder()).add(units);
    }

    /** Units of a part for each set of pools, from the lots that all pools of the set accept; what all take together decides a lot's price. */
    private void draw(String sku, Map<Long, LinearExprBuilder> need) {
        Map<Long, LinearExprBuilder> given = new TreeMap<>();
        need.keySet().forEach(set -> given.put(set, LinearExpr.newBuilder()));
        List<Lot> lots = new ArrayList<>(that.catalog().lots(sku));
        if (order.onHand().getOrDefault(sku, 0) > 0) {
            lots.add(Lot.onHand(sku, order.onHand().get(sku)));
        }
        for (Lot lot : lots) {
            List<Long> takers = need.keySet().stream().filter(set -> accepted(lot, set)).toList();
            if (!takers.isEmpty()) {
                draw(lot, takers, given);
            }
        }
        need.forEach((set, units) -> model.addEquality(given.get(set).build(), units.build()));
    }

    private boolean accepted(Lot lot, long set) {
        for (int pool = 0; pool < pools.size(); pool++) {
            if ((set >> pool & 1) == 1 && !Reading.lot(lot, pools.get(pool)).isEmpty()) {
                return false;
            }
        }
        return true;
    }

    private void draw(Lot lot, List<Long> takers, Map<Long, LinearExprBuilder> given) {
        List<Literal> taken = new ArrayList<>();
        for (int i = 0; i < lot.breaks().size(); i++) {
            int from = lot.breaks().get(i).minQuantity();
            int to = i + 1 < lot.breaks().size() ? Math.min(lot.available(), lot.breaks().get(i + 1).minQuantity() - 1) : lot.available();
            if (from <= to) {
                BoolVar at = model.newBoolVar(lot.sku() + lot.lot());
                LinearExprBuilder all = LinearExpr.newBuilder();
                for (long set : takers) {
                    IntVar units = model.newIntVar(0, to, lot.sku() + lot.lot());
                    all.add(units);
                    given.get(set).add(units);
                    cost.addTerm(units, lot.breaks().get(i).unitPrice() * SCALE);
                }
                model.addGreaterOrEqual(all, LinearExpr.term(at, from));
                model.addLessOrEqual(all, LinearExpr.term(at, to));
                taken.add(at);
            }
        }
        model.addAtMostOne(taken.toArray(Literal[]::new));
        if (!lot.onHand() && !isOwn(lot, that.catalog()) && (order.suppliersMax().isPresent() || order.deliveryCharge() > 0)) {
            BoolVar delivers = suppliers.computeIfAbsent(supplier(lot), name -> model.newBoolVar(name));
            taken.forEach(at -> model.addImplication(at, delivers));
        }
    }

    /** Whether a lot stands on the shop's own shelf. */
    static boolean isOwn(Lot lot, Catalog catalog) {
        return catalog.suppliers().own().stream().anyMatch(own -> own.toUpperCase(Locale.ROOT).equals(supplier(lot)));
    }

    /** Suppliers whose names differ in case and outer blanks are one. */
    static String supplier(Lot lot) {
        return lot.supplier().trim().toUpperCase(Locale.ROOT);
    }
}
