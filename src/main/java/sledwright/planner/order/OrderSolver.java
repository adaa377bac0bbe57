package sledwright.planner.order;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.domain.Objective;
import sledwright.domain.OrderRequest;
import sledwright.generator.Deadline;
import sledwright.generator.Search;
import sledwright.planner.order.Tally.Step;

/** Fills an order: a first one greedily, the bound by column generation, a better one by rounding its mix, then exchanges until time or steps are over. */
final class OrderSolver {

    /** Tries to better an order that no bound proves yet. */
    private static final int STEPS = 60;

    /** A machine that is not delivered counts as much as so many of the dearest. */
    private static final int DEAREST = 20;

    private static final long MOST_PENALTY = 400_000_000_000_000_000L;

    private final Market market;
    private final Pricer pricer;
    private final long seed;
    private final Deadline deadline;
    private final Consumer<Progress> progress;
    private final boolean[] open;
    private final long[] penalty;
    private final Generation generation;
    private final Filler filler;
    private final Suppliers suppliers;
    private Tally best;

    /**
     * @param cost  price less worth of what is delivered and, for what is not, its weight; scaled
     * @param bound none is below; {@link Long#MIN_VALUE}: not known yet
     */
    record Progress(long cost, long bound, int missing) {
    }

    OrderSolver(Catalog catalog, OrderRequest order, Predicate<Lot> offered, Search search, long seed, Deadline deadline, Consumer<Progress> progress) {
        market = new Market(catalog, order, offered);
        pricer = new Pricer(market, search);
        this.seed = seed;
        this.deadline = deadline;
        this.progress = progress;
        open = new boolean[market.suppliers().size()];
        Arrays.fill(open, true);
        penalty = penalties();
        generation = new Generation(market, pricer, open, penalty, false);
        filler = new Filler(market, pricer, generation);
        suppliers = new Suppliers(market);
    }

    /** So much that no machine is left out to save money, as far as whole numbers reach. */
    private long[] penalties() {
        long dearest = 1;
        long[] penalty = new long[market.lines().size()];
        long weight = 0;
        Tally empty = new Tally(market, new Draws(market, open), penalty);
        for (int line = 0; line < penalty.length; line++) {
            Pricer.Best alone = new Filler(market, pricer, null).alone(empty, line, deadline);
            dearest = Math.max(dearest, alone.column() == null ? 0 : alone.least());
            weight += (long) market.line(line).priority() * market.line(line).machines();
        }
        long each = Math.max(1, Math.min(dearest * DEAREST, MOST_PENALTY / weight));
        for (int line = 0; line < penalty.length; line++) {
            penalty[line] = each * market.line(line).priority();
        }
        return penalty;
    }

    Market market() {
        return market;
    }

    /** With what its suppliers charge, scaled. */
    long cost(Tally tally) {
        return suppliers.cost(tally);
    }

    Suppliers suppliers() {
        return suppliers;
    }

    Generation generation() {
        return generation;
    }

    /** The best order found and, in {@link #generation()}, what none is below. */
    Tally solve() {
        best = new Tally(market, new Draws(market, open), penalty);
        filler.fill(best, mostValuableFirst(), deadline);
        Exchange.improve(best, generation.columns(), deadline);
        best = suppliers.settle(best, this::mended);
        report();
        generation.run(deadline, bound -> report());
        if (!isProved() && generation.mix() != null) {
            take(suppliers.settle(rounded(), this::mended));
        }
        Refill refill = new Refill(filler, generation, seed);
        for (int step = 0; step < STEPS && !isProved() && !deadline.isOver(); step++) {
            take(refill.step(best, deadline));
        }
        return best;
    }

    /** Whether no order takes less: all money is whole minor units but for what is of worth. */
    boolean isProved() {
        boolean whole = market.lines().stream().noneMatch(line -> line.request().objective() == Objective.BEST_VALUE);
        return generation.bound() > cost(best) - (whole ? Scale.ONE : 1);
    }

    private Tally mended(Tally tally) {
        filler.fill(tally, mostValuableFirst(), deadline);
        Exchange.improve(tally, generation.columns(), deadline);
        return tally;
    }

    private void take(Tally other) {
        if (!suppliers.tooMany(other) && (suppliers.tooMany(best) || cost(other) < cost(best))) {
            best = other;
            report();
        }
    }

    private void report() {
        progress.accept(new Progress(cost(best), generation.bound(), best.missing()));
    }

    private List<Integer> mostValuableFirst() {
        return IntStream.range(0, market.lines().size()).boxed()
                .sorted(Comparator.comparing((Integer line) -> market.line(line).priority()).reversed()).toList();
    }

    /** The whole part of the master's mix, and the rest filled up. */
    private Tally rounded() {
        Tally tally = new Tally(market, new Draws(market, open), penalty);
        List<Map.Entry<Column, Double>> mix = new ArrayList<>(generation.mix().columns().entrySet());
        for (Map.Entry<Column, Double> used : mix) {
            int times = (int) Math.floor(used.getValue() + 1e-6);
            while (times > 0 && !tally.change(List.of(new Step(used.getKey(), times)))) {
                times--;
            }
        }
        mix.sort(Comparator.comparingDouble(used -> Math.floor(used.getValue() + 1e-6) - used.getValue()));
        for (Map.Entry<Column, Double> used : mix) {
            if (used.getValue() - Math.floor(used.getValue() + 1e-6) > 0.5) {
                tally.change(List.of(new Step(used.getKey(), 1)));
            }
        }
        return mended(tally);
    }
}
