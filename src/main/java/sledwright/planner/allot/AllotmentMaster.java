package sledwright.planner.allot;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleBiFunction;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;
import sledwright.generator.time.Deadline;

/** The linear program over the ways known so far: fractions of them keep promises, and what a lot's units are worth to them follows. */
final class AllotmentMaster {

    static {
        // Rows that are simplified away would have no dual values, and a scarce lot would look as if it were not.
        ExpressionsBasedModel.clearPresolvers();
    }

    /**
     * What units are worth.
     *
     * @param lots    a unit of each lot that is scarce
     * @param broken  a machine that is not delivered, where their number is limited
     * @param changed a machine that is changed, where their number is limited
     */
    record Duals(double cost, Map<LotName, Double> lots, double broken, double changed) {
    }

    private final Map<Promise, Integer> kinds;
    private final FillingPool pool;
    private final Map<LotName, Integer> left;

    /**
     * @param kinds one promise of each kind, and how many are like it
     * @param left  units that there are of each lot
     */
    AllotmentMaster(Map<Promise, Integer> kinds, FillingPool pool, Map<LotName, Integer> left) {
        this.kinds = kinds;
        this.pool = pool;
        this.left = left;
    }

    /** Null where the linear program is not solved. */
    Duals solve(AllotmentAim aim, Deadline deadline) {
        ExpressionsBasedModel model = new ExpressionsBasedModel();
        Map<LotName, Expression> rows = new LinkedHashMap<>();
        scarce().forEach(lot -> rows.put(lot, model.addExpression("lot" + rows.size()).upper(left.getOrDefault(lot, 0))));
        Expression broken = aim.mostBroken() == Integer.MAX_VALUE ? null : model.addExpression("broken").upper(aim.mostBroken());
        Expression changed = aim.mostChanged() == Integer.MAX_VALUE ? null : model.addExpression("changed").upper(aim.mostChanged());
        int number = 0;
        for (Map.Entry<Promise, Integer> kind : kinds.entrySet()) {
            Promise promise = kind.getKey();
            Expression each = model.addExpression("each" + number++).level(kind.getValue());
            List<Filling> ways = new ArrayList<>(pool.of(promise));
            ways.add(Filling.NONE);
            for (Filling way : ways) {
                Variable use = model.addVariable("v" + number++).lower(0).weight(aim.counts(promise, way));
                each.set(use, 1);
                way.takes().stream().filter(take -> rows.containsKey(take.lot()))
                        .forEach(take -> rows.get(take.lot()).set(use, take.units()));
                if (broken != null && way.order().isEmpty()) {
                    broken.set(use, promise.machines());
                }
                if (changed != null && way.changes(promise)) {
                    changed.set(use, promise.machines());
                }
            }
        }
        model.options.time_abort = Math.max(1, deadline.leftMillis());
        model.options.time_suffice = model.options.time_abort;
        Optimisation.Result result = model.minimise();
        return result.getState().isOptimal() ? duals(result, rows) : null;
    }

    private static Duals duals(Optimisation.Result result, Map<LotName, Expression> rows) {
        Map<String, Double> values = new HashMap<>();
        result.getMatchedMultipliers().forEach(one -> {
            if (one.getKey().left() instanceof Expression row) {
                values.merge(row.getName(), one.doubleValue(), Double::sum);
            }
        });
        // A limit from above is worth what it saves; its sign says only on which side it stands.
        ToDoubleBiFunction<String, Double> worth = (row, none) -> Math.abs(values.getOrDefault(row, none));
        Map<LotName, Double> lots = new TreeMap<>();
        rows.forEach((lot, row) -> lots.put(lot, worth.applyAsDouble(row.getName(), 0.0)));
        return new Duals(result.getValue(), lots, worth.applyAsDouble("broken", 0.0), worth.applyAsDouble("changed", 0.0));
    }

    /** Lots of which the ways known may take more than there is. */
    private List<LotName> scarce() {
        Map<LotName, Long> most = new TreeMap<>();
        kinds.forEach((promise, count) -> {
            Map<LotName, Integer> each = new HashMap<>();
            pool.of(promise).forEach(way -> way.takes().forEach(take -> each.merge(take.lot(), take.units(), Math::max)));
            each.forEach((lot, units) -> most.merge(lot, (long) units * count, Long::sum));
        });
        return most.entrySet().stream().filter(lot -> lot.getValue() > left.getOrDefault(lot.getKey(), 0)).map(Map.Entry::getKey).toList();
    }
}
