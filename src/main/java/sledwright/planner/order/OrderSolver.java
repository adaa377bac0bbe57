package sledwright.planner.order;

import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import sledwright.domain.Catalog;
import sledwright.domain.OrderRequest;
import sledwright.generator.Doubts;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.fill.Exchange;
import sledwright.planner.order.fill.Filler;
import sledwright.planner.order.fill.MixRounding;
import sledwright.planner.order.fill.Refill;
import sledwright.planner.order.fill.Suppliers;
import sledwright.planner.order.fill.Tally;
import sledwright.planner.order.market.Columns;
import sledwright.planner.order.market.Draws;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.ScaledMoney;
import sledwright.planner.order.relax.Branching;
import sledwright.planner.order.relax.ColumnGeneration;
import sledwright.planner.order.relax.Pricer;
import sledwright.planner.order.relax.RestrictedMaster;
import sledwright.planner.order.relax.Restrictions;

/**
 * Fills an order: a first one greedily, the bound by column generation, a better one by rounding its mix, then ever smaller sets of
 * orders until it is proved or the time is over.
 */
final class OrderSolver {

    /** Tries to better the first order before sets of orders are split, and the last once none can be split any more. */
    private static final int FIRST_STEPS = 10;

    /** Sets of orders that are kept to be split; of more only the least bound is. */
    private static final int MOST_SETS = 20_000;

    /** Rounds of column generation after which its mix is first made an order; then after twice as many. */
    private static final int FIRST_ROUNDING = 10;

    /** A linear program of more lines takes more time and memory than it is worth. */
    private static final int MOST_LINES = 1_500;

    /** Of very many lines a first bound has this share of the time. */
    private static final int SHARE_OF_BOUND = 8;

    /** While sets are split, one of so many searches serves to better the order; the others serve its bound. */
    private static final int SHARE_OF_TRIES = 3;

    /** What takes long and rarely gains is done in one of this many steps. */
    private static final int RARELY = 5;

    /** Of equals are orders that differ by less than a fraction of a minor unit. */
    private static final int FINEST = 100;

    private final Market market;
    private final Pricer pricer;
    private final long seed;
    private final Deadline all;
    private final Deadline early;
    private Deadline deadline;
    private final Consumer<Progress> progress;
    private final boolean[] open;
    private final Penalties penalties;
    private final long[] penalty;
    private final boolean whole;
    private final Columns columns;
    private ColumnGeneration generation;
    private final Filler filler;
    private final Suppliers suppliers;
    private final MixRounding rounding;
    private Tally best;
    private long closeEnough;
    private long cost;
    private long bound = Long.MIN_VALUE;
    private long tries;
    private int rounds;
    private int nextRounding = FIRST_ROUNDING;

    /**
     * @param cost  price less worth of what is delivered and, for what is not, its weight; scaled
     * @param bound none is below; {@link Long#MIN_VALUE}: not known yet
     */
    record Progress(long cost, long bound, int missing) {
    }

    OrderSolver(Catalog catalog, OrderRequest order, Search search, long seed, Deadline deadline, Consumer<Progress> progress) {
        market = new Market(catalog, order);
        pricer = new Pricer(market, search);
        this.seed = seed;
        all = deadline;
        // A short order leaves time to find out what it lacks.
        early = deadline.share(2);
        this.deadline = deadline;
        this.progress = progress;
        columns = new Columns(market.lines().size());
        open = new boolean[market.suppliers().size()];
        Arrays.fill(open, true);
        filler = new Filler(market, pricer, columns);
        penalties = new Penalties(market);
        penalty = penalties.byLine();
        whole = WholeCoins.in(order, catalog);
        generation = new ColumnGeneration(market, pricer, columns, penalty, false, Restrictions.NONE);
        suppliers = new Suppliers(market);
        rounding = new MixRounding(market, pricer, penalty);
    }

    Market market() {
        return market;
    }

    Suppliers suppliers() {
        return suppliers;
    }

    ColumnGeneration generation() {
        return generation;
    }

    /** An order to begin with, always the same where the time allows it. */
    Tally first() {
        keep(mended(new Tally(market, new Draws(market, open), penalty)));
        keep(suppliers.settle(best, this::mended));
        return best;
    }

    /** The best order found and, in {@link #bound()}, what none is below; one that is so much above that will do, scaled. */
    Tally solve(long close) {
        closeEnough = close;
        first();
        pace();
        if (market.lines().size() > Filler.MANY_LINES) {
            many();
            pace();
        }
        if (market.lines().size() <= MOST_LINES) {
            if (best.missing() == 0 && penalties.outweigh(cost)) {
                generation = generation.under(WholeOrders.all(market));
            }
            generation.run(Long.MAX_VALUE, deadline, this::afterRound);
        }
        if (!isProved() && generation.mix() != null) {
            take(suppliers.settle(rounded(generation.mix()), this::mended));
        }
        Refill refill = new Refill(filler, columns, seed);
        refill(refill);
        pace();
        if (generation.isFinished() && !isOver()) {
            Branching branching = new Branching(market);
            branch(branching, generation, refill);
        }
        if (!isOver()) {
            refill(refill);
        }
        return best;
    }

    private void pace() {
        deadline = best.missing() == 0 ? all : early;
    }

    /** What came first of very many lines is rarely the cheapest. */
    private void many() {
        long[] least = bound(deadline.share(SHARE_OF_BOUND));
        Tally tried = best.copy(best.draws());
        filler.renew(tried, least, deadline);
        take(tried);
        if (market.lines().size() > MOST_LINES) {
            bound(deadline.share(2));
            long before;
            do {
                before = cost;
                take(renewed());
            } while (cost < before && !isOver());
        }
    }

    private long[] bound(Deadline end) {
        long[] least = generation.start(end);
        bound = Math.max(bound, generation.bound());
        report();
        return least;
    }

    /** The best order with the machines of every line searched for again, as far as the time goes. */
    private Tally renewed() {
        Tally tried = best.copy(best.draws());
        for (int line = 0; line < market.lines().size() && !isOver(); line++) {
            filler.renew(tried, line, deadline);
        }
        return tried;
    }

    private boolean isOver() {
        return isProved() || deadline.isOver();
    }

    private void refill(Refill refill) {
        for (int step = 0; step < FIRST_STEPS && !isOver(); step++) {
            take(refill.step(best, deadline));
        }
    }

    /** Large orders take many rounds, and one that is cut off should have more to show than what came first. */
    private void afterRound(long now) {
        bound = now;
        report();
        if (++rounds == nextRounding) {
            nextRounding *= 2;
            take(rounded(generation.mix()));
        }
    }

    /**
     * Rules out one side of splits where no order better than the best lies on it: the mix then has to pay what such orders pay.
     *
     * @param others what orders that are in no such set take at least
     */
    private ColumnGeneration narrowed(Branching branching, ColumnGeneration all, long others) {
        ColumnGeneration narrow = all;
        Restrictions settled = null;
        while (settled != narrow.settled() && !isOver()) {
            settled = narrowed(narrow, branching.onOrder(narrow.settled(), narrow.mix()));
            if (settled == narrow.settled()) {
                settled = narrowed(narrow, branching.onFrames(narrow.settled(), narrow.mix()));
            }
            if (settled != narrow.settled()) {
                ColumnGeneration narrower = narrow.under(settled);
                narrower.run(enough(), deadline, now -> { });
                rise(Math.min(others, narrower.bound()));
                if (narrower.bound() >= enough()) {
                    return narrower;
                }
                if (!narrower.isFinished() || narrower.mix() == null) {
                    return narrow;
                }
                narrow = narrower;
                settled = null;
                if (!isProved()) {
                    take(rounded(narrow.mix()));
                }
            }
        }
        return narrow;
    }

    /** No order takes less than so much. */
    private void rise(long least) {
        bound = Math.max(bound, Math.min(least, cost));
        report();
    }

    private Restrictions narrowed(ColumnGeneration all, List<Branching.Split> splits) {
        Restrictions settled = all.settled();
        for (Branching.Split split : splits) {
            if (isRuledOut(all, split.more().apply(settled))) {
                settled = split.less().apply(settled);
            } else if (isRuledOut(all, split.less().apply(settled))) {
                settled = split.more().apply(settled);
            }
        }
        return settled;
    }

    private boolean isRuledOut(ColumnGeneration all, Restrictions way) {
        return way.isContradictory() || all.under(way).reaches(enough(), deadline);
    }

    /**
     * Splits orders into ever smaller sets, the one of the least bound first, until none of them can be better than the best: first by who
     * delivers, since a mix pays only a share of every charge, and by the part number of a line's modules; a set where that is settled is
     * narrowed before it is split further.
     */
    private void branch(Branching branching, ColumnGeneration root, Refill refill) {
        PriorityQueue<ColumnGeneration> sets = new PriorityQueue<>(Comparator.comparingLong(ColumnGeneration::bound));
        Set<ColumnGeneration> narrow = new HashSet<>();
        sets.add(root);
        long closed = Long.MAX_VALUE;
        for (int step = 0; !sets.isEmpty() && !isOver(); step++) {
            ColumnGeneration set = sets.poll();
            List<Restrictions> ways = set.mix() == null ? List.of() : branching.first(set.settled(), set.mix());
            boolean isNarrow = narrow.remove(set) || ways.isEmpty();
            if (isNarrow && ways.isEmpty() && set.mix() != null) {
                set = narrowed(branching, set, Math.min(closed, least(sets)));
                ways = set.bound() >= enough() ? List.of() : branching.split(set.settled(), set.mix());
            }
            if (ways.isEmpty()) {
                closed = Math.min(closed, set.bound());
            }
            for (Restrictions way : ways) {
                ColumnGeneration smaller = set.under(way);
                smaller.run(enough(), deadline, now -> { });
                if (!smaller.isFinished() || smaller.mix() == null || sets.size() >= MOST_SETS) {
                    // Either it holds nothing better or that is not known: the deadline came first, or it is one too many.
                    closed = Math.min(closed, smaller.bound());
                } else if (smaller.bound() < enough()) {
                    sets.add(smaller);
                    if (isNarrow) {
                        narrow.add(smaller);
                    }
                    attempt(() -> rounded(smaller.mix()));
                }
            }
            if (step % RARELY == 0) {
                attempt(() -> refill.step(best, deadline));
            }
            rise(Math.min(closed, least(sets)));
        }
    }

    private static long least(PriorityQueue<ColumnGeneration> sets) {
        return sets.isEmpty() ? Long.MAX_VALUE : sets.peek().bound();
    }

    /** Tries to better the order, unless that has taken more than its share of the searches. */
    private void attempt(Supplier<Tally> attempt) {
        long before = pricer.searches();
        if (tries * SHARE_OF_TRIES <= before) {
            take(attempt.get());
            tries += pricer.searches() - before;
        }
    }

    /** Whether the bound leaves no room for another machine. */
    boolean isMost() {
        // All that orders may differ by besides is less than half of what it weighs.
        return bound > Long.MIN_VALUE && penalties.isCertain() && cost - bound < penalties.each() / 2;
    }

    /** No order that delivers as much takes less for it, scaled; {@link Long#MIN_VALUE}: not known yet. */
    long boundOfDelivered() {
        // What delivers more lacks less, so that the bound leaves it even less to save.
        return bound == Long.MIN_VALUE ? Long.MIN_VALUE : bound - (best.cost() - best.ofDelivered());
    }

    /** A bound above which no set of orders holds a better one. */
    private long enough() {
        return cost - Math.max(closeEnough, whole ? ScaledMoney.ONE : ScaledMoney.ONE / FINEST) + 1;
    }

    /** No order takes less, scaled; {@link Long#MIN_VALUE}: not known yet. */
    long bound() {
        return bound;
    }

    /** Whether no order takes less: all money is whole minor units but for what is of worth, which counts to a hundredth. */
    boolean isProved() {
        return bound >= enough();
    }

    OrderOutcome.End ended() {
        return isProved() ? OrderOutcome.End.PROVED : deadline.isOver() ? OrderOutcome.End.TIME : OrderOutcome.End.NOTHING_LEFT;
    }

    /** What keeps the order from being proved, besides that nothing was left to try. */
    Doubts doubts() {
        Doubts found = pricer.doubts();
        return deadline.isOver() ? Doubts.ofAll(List.of(found, Doubts.of(Doubts.Cause.TIME))) : found;
    }

    private Tally mended(Tally tally) {
        filler.fill(tally, mostValuableFirst(), deadline);
        Exchange.improve(tally, columns.all(), deadline);
        return tally;
    }

    private void take(Tally other) {
        if (!suppliers.tooMany(other) && (suppliers.tooMany(best) || suppliers.cost(other) < cost)) {
            keep(other);
        }
    }

    /** Who delivers what has to be worked out for the cost, so that is done once. */
    private void keep(Tally order) {
        best = order;
        cost = suppliers.cost(order);
        report();
    }

    private void report() {
        progress.accept(new Progress(cost, bound, best.missing()));
    }

    private List<Integer> mostValuableFirst() {
        return IntStream.range(0, market.lines().size()).boxed()
                .sorted(Comparator.comparing((Integer line) -> market.line(line).priority()).reversed()).toList();
    }

    private Tally rounded(RestrictedMaster.Mix mix) {
        return mended(rounding.of(mix));
    }
}
