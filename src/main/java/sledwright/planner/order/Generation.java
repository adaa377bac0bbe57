package sledwright.planner.order;

import java.util.function.Consumer;
import sledwright.generator.Deadline;

/**
 * Column generation: the master prices the parts, the exact search answers with the best machines at these prices, and so on until
 * no better ones exist. Every round also gives a bound, whether or not it is the last.
 */
final class Generation {

    /** How far the prices stay with those of the best bound so far; the master's own swing. */
    private static final double HELD = 0.6;

    private static final double CLOSE = 1e-7;

    private final Market market;
    private final Pricer pricer;
    private final Master master;
    private final LowerBound lower;
    private final boolean free;
    private final Columns columns;
    private final Restrictions settled;
    private Prices center;
    private long bound = Long.MIN_VALUE;
    private Master.Mix mix;
    private boolean finished;

    /** @param free whether parts cost nothing, so that only what is delivered counts */
    Generation(Market market, Pricer pricer, Columns columns, long[] penalty, boolean free, Restrictions settled) {
        this.market = market;
        this.pricer = pricer;
        this.columns = columns;
        this.free = free;
        this.settled = settled;
        master = new Master(market, penalty, free, settled);
        lower = new LowerBound(market, penalty, free, settled);
    }

    Restrictions settled() {
        return settled;
    }

    /** No order takes less, scaled. */
    long bound() {
        return bound;
    }

    /** The last mix of columns; null before the first round. */
    Master.Mix mix() {
        return mix;
    }

    /** Whether the bound is as good as this relaxation gives. */
    boolean isFinished() {
        return finished;
    }

    /** Runs until nothing is left, until the bound is as high as matters, or the deadline comes, telling of each round. */
    void run(long enough, Deadline deadline, Consumer<Long> better) {
        while (!finished && bound < enough && !deadline.isOver()) {
            round(deadline);
            better.accept(bound);
        }
    }

    private void round(Deadline deadline) {
        mix = master.solve(columns.all());
        if (mix == null) {
            bound = Long.MAX_VALUE / 2;
            finished = true;
            return;
        }
        Prices own = lower.kept(defaulted(mix.prices()));
        boolean added = center != null && look(lower.kept(own.towards(center, HELD)), deadline);
        if (!added && !deadline.isOver()) {
            added = look(own, deadline);
        }
        double gap = mix.cost() - Scale.minor(bound);
        finished = !deadline.isOver() && (!added || gap <= CLOSE * Math.abs(mix.cost()));
        columns.tidy(this::reduced, mix.columns().keySet());
    }

    /** Asks the search at some prices; whether it found a column that the master lacks and gains by. */
    private boolean look(Prices prices, Deadline deadline) {
        int lines = market.lines().size();
        long[] one = new long[lines];
        long[] all = new long[lines];
        boolean added = false;
        for (int line = 0; line < lines; line++) {
            int machines = market.line(line).machines();
            boolean uniform = market.line(line).uniform() && machines > 1;
            Pricer.Best best = pricer.best(line, 1, prices, deadline);
            one[line] = best.least();
            all[line] = Long.MAX_VALUE / 4;
            if (market.line(line).uniform()) {
                best = uniform ? pricer.best(line, machines, prices, deadline) : best;
                all[line] = Math.min(all[line], best.least());
            }
            if (best.column() != null) {
                added |= columns.isNew(best.column());
                columns.add(best.column());
            }
        }
        long found = lower.at(prices, one, all);
        if (found > bound) {
            bound = found;
            center = prices;
        }
        center = center == null ? prices : center;
        return added;
    }

    /** What the master has not met is worth what it costs at least, so that the search does not take it for a gift. */
    private Prices defaulted(Prices prices) {
        long[][] parts = new long[prices.part().length][];
        for (int pool = 0; pool < parts.length; pool++) {
            parts[pool] = prices.part()[pool].clone();
            for (int part = 0; part < market.parts() && !free; part++) {
                // The lots of a part that the master has met set its worth at its cheapest or above.
                parts[pool][part] = Math.max(parts[pool][part], market.cheapest(part, pool));
            }
        }
        long[] bay = prices.bay().clone();
        for (Bay some : market.bays()) {
            if (bay[some.id()] == 0 && prices.watt()[some.id()] == 0) {
                bay[some.id()] = lower.takes(new Prices(parts, bay, prices.watt(), prices.use()), some) / some.bays();
            }
        }
        return new Prices(parts, bay, prices.watt(), prices.use());
    }

    /** What a column takes beyond what its machines are worth to the master, scaled. */
    private long reduced(Column column) {
        return center.of(column, market.poolOf(column.line())) - Math.round(mix.filling()[column.line()] * column.machines());
    }
}
