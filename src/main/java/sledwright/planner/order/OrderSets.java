package sledwright.planner.order;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Stream;
import sledwright.planner.order.fill.Tally;
import sledwright.planner.order.market.Range;
import sledwright.planner.order.relax.Branching;
import sledwright.planner.order.relax.ColumnGeneration;
import sledwright.planner.order.relax.Pricer;
import sledwright.planner.order.relax.RestrictedMaster;
import sledwright.planner.order.relax.Restrictions;

/** Splits orders into ever smaller sets until none of them can hold a better one than the best. */
final class OrderSets {

    /** Sets of orders that are kept to be split; of more only the least bound is. */
    private static final int MOST_SETS = 20_000;

    /** While sets are split, one of so many searches serves to better the order; the others serve its bound. */
    private static final int SHARE_OF_TRIES = 3;

    /** What takes long and rarely gains is done in one of this many steps. */
    private static final int RARELY = 5;

    private final Incumbent incumbent;
    private final Branching branching;
    private final Pricer pricer;
    private final WholeOrders wholes;
    private final Function<RestrictedMaster.Mix, Tally> rounding;
    private final Supplier<Tally> refill;
    private final PriorityQueue<ColumnGeneration> sets = new PriorityQueue<>(Comparator.comparingLong(ColumnGeneration::bound));
    private final Deque<ColumnGeneration> latest = new ArrayDeque<>();
    private final Set<ColumnGeneration> narrow = new HashSet<>();
    /** What the known columns make of the ways out of a set's mix. */
    private final Map<Restrictions, Long> estimates = new ConcurrentHashMap<>();
    private long closed = Long.MAX_VALUE;
    private long tries;

    /**
     * @param rounding makes a mix an order
     * @param refill   betters the best order, or not
     */
    OrderSets(Incumbent incumbent, Branching branching, Pricer pricer, WholeOrders wholes, Function<RestrictedMaster.Mix, Tally> rounding,
            Supplier<Tally> refill) {
        this.incumbent = incumbent;
        this.branching = branching;
        this.pricer = pricer;
        this.wholes = wholes;
        this.rounding = rounding;
        this.refill = refill;
    }

    /**
     * Splits sets, the one of the least bound first, until all are closed or the time is over: first by who delivers, since a mix pays only
     * a share of every charge, and by the part number of a line's modules; a set where that is settled is narrowed before it is split
     * further. As long as the best order lacks a machine every other step takes the last and smallest set, where a whole order is soon
     * found or soon ruled out.
     */
    void split(ColumnGeneration root) {
        // Cuts make a bound closer, but lead away from the mixes of which a first order is made.
        begin(incumbent.isWhole() ? root.tightened() : root);
        for (int step = 0; !sets.isEmpty() && !incumbent.isOver(); step++) {
            ColumnGeneration set = incumbent.isWhole() || step % 2 > 0 || latest.isEmpty() ? sets.peek() : latest.peek();
            sets.remove(set);
            latest.remove(set);
            split(set, narrow.remove(set));
            if (step % RARELY == 0) {
                attempt(refill);
            }
            rise(Math.min(closed, least()));
        }
    }

    /** All orders; those that lack nothing apart from the others as long as none of them is known. */
    private void begin(ColumnGeneration root) {
        if (incumbent.isWhole()) {
            root.run(incumbent.enough(), incumbent.deadline(), incumbent::rise);
            sets.add(root);
            return;
        }
        Restrictions all = root.settled();
        for (Range missing : List.of(Range.ANY.from(1), Range.ANY.upTo(0))) {
            ColumnGeneration half = root.under(held(all.withMissing(missing)));
            half.run(incumbent.enough(), incumbent.deadline(), now -> { });
            sets.add(half);
            latest.push(half);
        }
    }

    private void split(ColumnGeneration asked, boolean isNarrow) {
        estimates.clear();
        ColumnGeneration set = asked;
        List<Restrictions> ways = set.mix() == null ? List.of() : first(set);
        boolean narrows = isNarrow || ways.isEmpty();
        if (narrows && ways.isEmpty() && set.mix() != null) {
            set = narrowed(set, Math.min(closed, least()));
            // Narrower, it may have a mix of several suppliers or parts again.
            ways = set.bound() >= incumbent.enough() ? List.of() : ways(set);
        }
        if (ways.isEmpty()) {
            closed = Math.min(closed, set.bound());
        }
        List<ColumnGeneration> kept = new ArrayList<>();
        for (Restrictions way : ways) {
            ColumnGeneration smaller = set.under(held(way));
            smaller.run(incumbent.enough(), incumbent.deadline(), now -> { });
            if (!smaller.isFinished() || smaller.mix() == null || sets.size() >= MOST_SETS) {
                // Either it holds nothing better or that is not known: the deadline came first, or it is one too many.
                closed = Math.min(closed, smaller.bound());
            } else if (smaller.bound() < incumbent.enough()) {
                sets.add(smaller);
                kept.add(smaller);
                if (narrows) {
                    narrow.add(smaller);
                }
                attempt(() -> rounding.apply(smaller.mix()));
            }
        }
        kept.sort(Comparator.comparingLong(ColumnGeneration::bound).reversed());
        kept.forEach(latest::push);
    }

    private List<Restrictions> first(ColumnGeneration set) {
        return branching.first(set.settled(), set.mix(), incumbent.cost() - set.bound());
    }

    private List<Restrictions> ways(ColumnGeneration set) {
        List<Restrictions> first = first(set);
        return first.isEmpty() ? strongest(set) : first;
    }

    /** The split that raises the bounds of what it leaves most, multiplied, as far as the columns known so far tell. */
    private List<Restrictions> strongest(ColumnGeneration set) {
        List<List<Restrictions>> all = branching.ways(set.settled(), set.mix());
        double[] rises = all.size() < 2 ? new double[all.size()]
                : all.stream().parallel().mapToDouble(ways -> rise(set, ways)).toArray();
        int best = 0;
        for (int i = 1; i < rises.length; i++) {
            best = rises[i] > rises[best] ? i : best;
        }
        return all.isEmpty() ? List.of() : all.get(best);
    }

    private double rise(ColumnGeneration set, List<Restrictions> ways) {
        return ways.stream().mapToDouble(way -> Math.log(Math.max(1, estimate(set, way) - set.bound()))).average().orElseThrow();
    }

    private long estimate(ColumnGeneration set, Restrictions way) {
        return estimates.computeIfAbsent(way, some -> set.under(some).estimate(incumbent.deadline()));
    }

    /** With what holds of whole orders, where a set holds no others, or others are no better. */
    private Restrictions held(Restrictions way) {
        return way.missing().most() == 0 || incumbent.outweighsShort() ? wholes.of(way, incumbent.deadline()) : way;
    }

    private long least() {
        return sets.isEmpty() ? Long.MAX_VALUE : sets.peek().bound();
    }

    private void rise(long least) {
        incumbent.rise(Math.min(least, incumbent.cost()));
    }

    /** Tries to better the order, unless that has taken more than its share of the searches. */
    private void attempt(Supplier<Tally> attempt) {
        long before = pricer.searches();
        if (tries * SHARE_OF_TRIES <= before) {
            incumbent.take(attempt.get());
            tries += pricer.searches() - before;
        }
    }

    /**
     * Rules out one side of splits where no order better than the best lies on it: the mix then has to pay what such orders pay.
     *
     * @param others what orders that are in no such set take at least
     */
    private ColumnGeneration narrowed(ColumnGeneration all, long others) {
        ColumnGeneration narrow = all;
        Restrictions settled = null;
        while (settled != narrow.settled() && !incumbent.isOver()) {
            settled = narrowed(narrow, branching.onOrder(narrow.settled(), narrow.mix()));
            if (settled == narrow.settled()) {
                settled = narrowed(narrow, branching.onFrames(narrow.settled(), narrow.mix()));
            }
            if (settled != narrow.settled()) {
                ColumnGeneration narrower = narrow.under(settled);
                narrower.run(incumbent.enough(), incumbent.deadline(), now -> { });
                rise(Math.min(others, narrower.bound()));
                if (narrower.bound() >= incumbent.enough()) {
                    return narrower;
                }
                if (!narrower.isFinished() || narrower.mix() == null) {
                    return narrow;
                }
                narrow = narrower;
                settled = null;
                if (!incumbent.isProved()) {
                    incumbent.take(rounding.apply(narrow.mix()));
                }
            }
        }
        return narrow;
    }

    private Restrictions narrowed(ColumnGeneration all, List<Branching.Split> splits) {
        Restrictions from = all.settled();
        // Where the columns known so far are better already, further ones will not rule it out.
        List<Branching.Split> promising = splits.parallelStream()
                .filter(split -> Stream.of(split.more(), split.less()).map(way -> way.apply(from))
                        .anyMatch(way -> way.isContradictory() || estimate(all, way) >= incumbent.enough())).toList();
        Restrictions settled = from;
        for (Branching.Split split : promising) {
            if (isRuledOut(all, split.more().apply(settled))) {
                settled = split.less().apply(settled);
            } else if (isRuledOut(all, split.less().apply(settled))) {
                settled = split.more().apply(settled);
            }
        }
        return settled;
    }

    private boolean isRuledOut(ColumnGeneration all, Restrictions way) {
        return way.isContradictory() || all.under(way).reaches(incumbent.enough(), incumbent.deadline());
    }
}
