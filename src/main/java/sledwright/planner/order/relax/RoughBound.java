package sledwright.planner.order.relax;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.stream.IntStream;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.market.LineGroup;
import sledwright.planner.order.market.Market;

/**
 * What each of very many lines takes at least: a machine that does no more than all lines of a group ask for costs no more than that of
 * any. Groups become smaller as far as the time goes.
 */
record RoughBound(Market market, Pricer pricer, Duals duals) {

    /** Groups to begin with, as far as lines differ in figures alone. */
    private static final int GROUPS = 12;

    /** @param least a machine of the group takes no less */
    private record Bounded(LineGroup group, long least) {
    }

    /**
     * The least for a machine of each line, {@link Long#MAX_VALUE} where there is none; null where there was not even time for a few
     * groups.
     */
    long[] eachLine(Deadline deadline) {
        List<Integer> all = IntStream.range(0, market.lines().size()).boxed().toList();
        PriorityQueue<Bounded> open = new PriorityQueue<>(Comparator.comparingDouble((Bounded one) -> one.group.weight()).reversed()
                .thenComparing(one -> one.group.lines().get(0)));
        List<Bounded> settled = new ArrayList<>();
        for (LineGroup group : LineGroup.of(market, all, GROUPS, true)) {
            if (deadline.isOver()) {
                return null;
            }
            open.add(bounded(group, Long.MIN_VALUE, deadline));
        }
        while (!open.isEmpty() && !deadline.isOver()) {
            Bounded one = open.poll();
            if (one.group.isSplittable() && one.least < Long.MAX_VALUE) {
                one.group.split().forEach(half -> open.add(bounded(half, one.least, deadline)));
            } else {
                settled.add(one);
            }
        }
        settled.addAll(open);
        long[] least = new long[all.size()];
        settled.forEach(one -> one.group.lines().forEach(line -> least[line] = one.least));
        return least;
    }

    private Bounded bounded(LineGroup group, long atLeast, Deadline deadline) {
        return new Bounded(group, Math.max(atLeast, pricer.best(group, duals, deadline).least()));
    }
}
