package sledwright.planner.order;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;
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

    /** Rounds of column generation after which its mix is first made an order; then after twice as many. */
    private static final int FIRST_ROUNDING = 10;

    /** A linear program of more lines takes more time and memory than it is worth. */
    private static final int MOST_LINES = 1_500;

    /** Of very many lines a first bound has this share of the time. */
    private static final int SHARE_OF_BOUND = 8;

    private final Market market;
    private final Pricer pricer;
    private final long seed;
    private final boolean[] open;
    private final long[] penalty;
    private final Columns columns;
    private ColumnGeneration generation;
    private final Filler filler;
    private final Suppliers suppliers;
    private final MixRounding rounding;
    private final WholeOrders wholes;
    private final Incumbent incumbent;
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
        columns = new Columns(market.lines().size());
        open = new boolean[market.suppliers().size()];
        Arrays.fill(open, true);
        filler = new Filler(market, pricer, columns);
        Penalties penalties = new Penalties(market);
        penalty = penalties.byLine();
        generation = new ColumnGeneration(market, pricer, columns, penalty, false, Restrictions.NONE);
        suppliers = new Suppliers(market);
        wholes = new WholeOrders(market, new Pricer(market, search, true));
        incumbent = new Incumbent(suppliers, penalties, WholeCoins.in(order, catalog), deadline, progress);
        rounding = new MixRounding(market, pricer, penalty);
    }

    Market market() {
        return market;
    }

    Suppliers suppliers() {
        return suppliers;
    }

    Incumbent incumbent() {
        return incumbent;
    }

    ColumnGeneration generation() {
        return generation;
    }

    /** An order to begin with, always the same where the time allows it. */
    Tally first() {
        begin();
        incumbent.keep(suppliers.settle(incumbent.best(), this::mended));
        return incumbent.best();
    }

    /** An order of whoever delivers, which may be too many. */
    private void begin() {
        incumbent.keep(mended(new Tally(market, new Draws(market, open), penalty)));
    }

    /** The best order found; one that is so much above that will do, scaled. */
    Tally solve(long close) {
        incumbent.suffice(close);
        begin();
        incumbent.keep(suppliers.fewest(incumbent.best(), this::mended));
        if (market.lines().size() > Filler.MANY_LINES) {
            many();
        }
        if (market.lines().size() <= MOST_LINES) {
            if (incumbent.outweighsShort()) {
                generation = generation.under(wholes.rough());
            }
            generation.run(Long.MAX_VALUE, incumbent.deadline(), this::afterRound);
        }
        if (!incumbent.isProved() && generation.mix() != null) {
            incumbent.take(suppliers.fewest(rounded(generation.mix()), this::mended));
        }
        Refill refill = new Refill(filler, columns, seed);
        refill(refill);
        if (generation.isFinished() && !incumbent.isOver()) {
            new OrderSets(incumbent, new Branching(market), pricer, wholes, this::rounded,
                    () -> refill.step(incumbent.best(), incumbent.deadline())).split(generation);
        }
        if (!incumbent.isOver()) {
            refill(refill);
        }
        return incumbent.best();
    }

    /** What came first of very many lines is rarely the cheapest. */
    private void many() {
        long[] least = bound(incumbent.deadline().share(SHARE_OF_BOUND));
        Tally best = incumbent.best();
        Tally tried = best.copy(best.draws());
        filler.renew(tried, least, incumbent.deadline());
        incumbent.take(tried);
        if (market.lines().size() > MOST_LINES) {
            bound(incumbent.deadline().share(2));
            long before;
            do {
                before = incumbent.cost();
                incumbent.take(renewed());
            } while (incumbent.cost() < before && !incumbent.isOver());
        }
    }

    private long[] bound(Deadline end) {
        long[] least = generation.start(end);
        incumbent.rise(generation.bound());
        return least;
    }

    /** The best order with the machines of every line searched for again, as far as the time goes. */
    private Tally renewed() {
        Tally tried = incumbent.best().copy(incumbent.best().draws());
        for (int line = 0; line < market.lines().size() && !incumbent.isOver(); line++) {
            filler.renew(tried, line, incumbent.deadline());
        }
        return tried;
    }

    private void refill(Refill refill) {
        for (int step = 0; step < FIRST_STEPS && !incumbent.isOver(); step++) {
            incumbent.take(refill.step(incumbent.best(), incumbent.deadline()));
        }
    }

    /** Large orders take many rounds, and one that is cut off should have more to show than what came first. */
    private void afterRound(long now) {
        incumbent.rise(now);
        if (++rounds == nextRounding && generation.mix() != null) {
            nextRounding *= 2;
            incumbent.take(rounded(generation.mix()));
        }
    }

    OrderOutcome.End ended() {
        return incumbent.isProved() ? OrderOutcome.End.PROVED
                : incumbent.deadline().isOver() ? OrderOutcome.End.TIME : OrderOutcome.End.NOTHING_LEFT;
    }

    /** What keeps the order from being proved, besides that nothing was left to try. */
    Doubts doubts() {
        Doubts found = pricer.doubts();
        return incumbent.deadline().isOver() ? Doubts.ofAll(List.of(found, Doubts.of(Doubts.Cause.TIME))) : found;
    }

    private Tally mended(Tally tally) {
        filler.fill(tally, mostValuableFirst(), incumbent.deadline());
        Exchange.improve(tally, columns.all(), incumbent.deadline());
        return tally;
    }

    private List<Integer> mostValuableFirst() {
        return IntStream.range(0, market.lines().size()).boxed()
                .sorted(Comparator.comparing((Integer line) -> market.line(line).priority()).reversed()).toList();
    }

    private Tally rounded(RestrictedMaster.Mix mix) {
        return mended(rounding.of(mix));
    }
}
