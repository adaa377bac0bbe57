package sledwright.planner.order;

import java.util.function.Consumer;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.fill.Suppliers;
import sledwright.planner.order.fill.Tally;
import sledwright.planner.order.market.ScaledMoney;

/** The best order so far, what no order goes below, and how long there is to better either. */
final class Incumbent {

    /** Of equals are orders that differ by less than a fraction of a minor unit. */
    private static final int FINEST = 100;

    private final Suppliers suppliers;
    private final Penalties penalties;
    private final boolean wholeCoins;
    private final Deadline all;
    private final Deadline early;
    private final Consumer<OrderSolver.Progress> progress;
    private Tally best;
    private long closeEnough;
    private long cost;
    private long bound = Long.MIN_VALUE;

    /** @param wholeCoins whether every order comes to whole minor units */
    Incumbent(Suppliers suppliers, Penalties penalties, boolean wholeCoins, Deadline deadline, Consumer<OrderSolver.Progress> progress) {
        this.suppliers = suppliers;
        this.penalties = penalties;
        this.wholeCoins = wholeCoins;
        this.progress = progress;
        all = deadline;
        // A short order leaves time to find out what it lacks.
        early = deadline.share(2);
    }

    /** An order that is so much above the bound will do, scaled. */
    void suffice(long close) {
        closeEnough = close;
    }

    Tally best() {
        return best;
    }

    /** Of the best order, with what its suppliers charge; scaled. */
    long cost() {
        return cost;
    }

    boolean isWhole() {
        return best.missing() == 0;
    }

    /** Whether no order that lacks a machine is better. */
    boolean outweighsShort() {
        return isWhole() && penalties.outweigh(cost);
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
    long enough() {
        return cost - Math.max(closeEnough, wholeCoins ? ScaledMoney.ONE : ScaledMoney.ONE / FINEST) + 1;
    }

    /** Whether no order takes less: all money is whole minor units but for what is of worth, which counts to a hundredth. */
    boolean isProved() {
        return bound >= enough();
    }

    Deadline deadline() {
        return best == null || isWhole() ? all : early;
    }

    boolean isOver() {
        return isProved() || deadline().isOver();
    }

    /** The other order where it is better. */
    void take(Tally other) {
        if (!suppliers.tooMany(other) && (suppliers.tooMany(best) || suppliers.cost(other) < cost)) {
            keep(other);
        }
    }

    /** Who delivers what has to be worked out for the cost, so that is done once. */
    void keep(Tally order) {
        best = order;
        cost = suppliers.cost(order);
        report();
    }

    /** No order takes less than so much. */
    void rise(long least) {
        bound = Math.max(bound, least);
        report();
    }

    private void report() {
        progress.accept(new OrderSolver.Progress(cost, bound, best.missing()));
    }
}
