package sledwright.planner.allot;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sledwright.generator.time.Deadline;
import sledwright.planner.linear.LinearProgram;
import sledwright.planner.linear.LinearProgram.Row;
import sledwright.planner.linear.LinearProgram.Variable;

/**
 * The linear program over the ways known so far: fractions of them keep promises, and what a lot's units are worth to them follows.
 *
 * @param kinds one promise of each kind, and how many are like it
 * @param left  units that there are of each lot
 */
record AllotmentMaster(Map<Promise, Integer> kinds, FillingPool pool, Map<LotName, Integer> left) {

    /**
     * What units are worth.
     *
     * @param lots    a unit of each lot that is scarce
     * @param broken  a machine that is not delivered, where their number is limited
     * @param changed a machine that is changed, where their number is limited
     */
    record Duals(double cost, Map<LotName, Double> lots, double broken, double changed) {
    }

    /** Null where the linear program is not solved. */
    Duals solve(AllotmentAim aim, Deadline deadline) {
        LinearProgram program = new LinearProgram();
        Map<LotName, Row> rows = new LinkedHashMap<>();
        scarce().forEach(lot -> rows.put(lot, program.atMost(left.getOrDefault(lot, 0))));
        Row broken = aim.mostBroken() == Integer.MAX_VALUE ? null : program.atMost(aim.mostBroken());
        Row changed = aim.mostChanged() == Integer.MAX_VALUE ? null : program.atMost(aim.mostChanged());
        for (Map.Entry<Promise, Integer> kind : kinds.entrySet()) {
            Promise promise = kind.getKey();
            Row each = program.exactly(kind.getValue());
            List<Filling> ways = new ArrayList<>(pool.of(promise));
            ways.add(Filling.NONE);
            for (Filling way : ways) {
                Variable use = program.variable(aim.counts(promise, way));
                each.add(use, 1);
                way.takes().stream().filter(take -> rows.containsKey(take.lot()))
                        .forEach(take -> rows.get(take.lot()).add(use, take.units()));
                if (broken != null && way.order().isEmpty()) {
                    broken.add(use, promise.machines());
                }
                if (changed != null && way.changes(promise)) {
                    changed.add(use, promise.machines());
                }
            }
        }
        return program.solve(deadline).map(answer -> {
            Map<LotName, Double> lots = new TreeMap<>();
            rows.forEach((lot, row) -> lots.put(lot, saved(answer, row)));
            return new Duals(answer.cost(), lots, saved(answer, broken), saved(answer, changed));
        }).orElse(null);
    }

    /** What one more of a limit saves. */
    private static double saved(LinearProgram.Answer answer, Row limit) {
        return limit == null ? 0 : Math.max(0, -answer.dual(limit));
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
