package sledwright.planner.order.fill;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.function.ToLongFunction;
import sledwright.domain.Lot;
import sledwright.domain.Lot.PriceBreak;
import sledwright.domain.Pick;
import sledwright.domain.Requirements;
import sledwright.generator.time.Deadline;
import sledwright.metrics.CheapestDraw;
import sledwright.planner.order.market.Bay;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.Columns;
import sledwright.planner.order.market.Draws;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.ScaledMoney;
import sledwright.planner.order.relax.Pricer;

/** Fills what an order still lacks, machine by machine, each the cheapest from what the stock still has. */
public final class Filler {

    /** Lots sold only in larger numbers are left to lines that reach them with the machines they have. */
    private static final int MOST_TOGETHER = 64;
    /** How many machines more than those that were found are looked at one by one. */
    private static final int FEW = 8;

    /** Where more lines are open, machines that are known are taken before any is searched for. */
    public static final int MANY_LINES = 24;

    private final Market market;
    private final Pricer pricer;
    private final Columns columns;
    private final KnownMachines known;
    private final Cover cover;

    /** @param columns takes up what is found */
    public Filler(Market market, Pricer pricer, Columns columns) {
        this.market = market;
        this.pricer = pricer;
        this.columns = columns;
        known = new KnownMachines(market, pricer);
        cover = new Cover(market, pricer, columns, known);
    }

    /** Fills the lines in some order as far as the stock and the time go. */
    public void fill(Tally tally, List<Integer> lines, Deadline deadline) {
        boolean many = lines.stream().filter(line -> tally.missing(line) > 0).count() > MANY_LINES;
        if (many) {
            cover.fill(tally, lines, deadline);
        }
        for (int line : lines) {
            if (many && tally.missing(line) > 0) {
                fillKnown(tally, line, deadline);
            }
            fill(tally, line, deadline);
        }
        for (int line : lines) {
            if (many && tally.missing(line) > 0) {
                // There may be too little of the one module part that its machines have.
                renew(tally, line, deadline);
            }
            if (many && tally.missing(line) > 0) {
                new Eviction(this, tally).run(line, deadline);
            }
        }
    }

    private Requirements require(int line) {
        return market.line(line).request().require();
    }

    void fill(Tally tally, int line, Deadline deadline) {
        if (deadline.isOver()) {
            return;
        }
        if (market.line(line).uniform()) {
            fillWhole(tally, line, deadline);
        } else if (require(line).populated().onePart()) {
            fillOfOnePart(tally, line, deadline);
        } else {
            fillOneByOne(tally, line, deadline, part -> true);
        }
    }

    /** Fills a line with machines that are known from others. */
    private void fillKnown(Tally tally, int line, Deadline deadline) {
        boolean filled = true;
        while (filled && tally.missing(line) > 0 && !deadline.isOver()) {
            Column column = known.suiting(tally, line);
            filled = false;
            for (int times = column == null ? 0 : tally.missing(line) / column.machines(); times > 0 && !filled; times /= 2) {
                filled = tally.change(List.of(new Tally.Step(columns.add(column), times)));
            }
        }
    }

    /** Searches again for the machines of a line; keeps those that it has where these cost no more. */
    public void renew(Tally tally, int line, Deadline deadline) {
        tally.renew(List.of(line), () -> fill(tally, line, deadline));
    }

    /**
     * Searches again for the machines of all lines, those first that have most to gain.
     *
     * @param least what a machine of each line takes at least, as far as is known
     */
    public void renew(Tally tally, long[] least, Deadline deadline) {
        new Renewal(this, columns, known, tally, least).run(deadline);
    }

    private Pricer.Best best(Tally tally, int line, int machines, Map<Integer, List<Lot>> left, Deadline deadline) {
        Leftovers leftovers = new Leftovers(tally, left);
        ToLongFunction<Bay> place = leftovers.places(tally.missing(line));
        return pricer.best(line, machines, place, leftovers.offers(place), deadline);
    }

    /**
     * Machines that all take modules of one part number: those of the part that suits the first of them best or, where these do not
     * suffice, of the one that suffices for most machines, then for the least cost.
     */
    private void fillOfOnePart(Tally tally, int line, Deadline deadline) {
        Set<Integer> settled = tally.moduleParts(line);
        if (!settled.isEmpty()) {
            fillOneByOne(tally, line, deadline, part -> !market.isModule(part) || settled.contains(part));
            return;
        }
        List<Integer> tried = new ArrayList<>();
        List<Tally.Step> best = List.of();
        int bestMissing = tally.missing(line);
        long bestCost = tally.cost();
        boolean any = true;
        while (any && bestMissing > 0 && !deadline.isOver()) {
            fillOneByOne(tally, line, deadline, part -> !tried.contains(part));
            tried.addAll(tally.moduleParts(line));
            if (tally.missing(line) < bestMissing || tally.missing(line) == bestMissing && tally.cost() < bestCost) {
                bestMissing = tally.missing(line);
                bestCost = tally.cost();
                best = tally.steps(List.of(line));
            }
            any = !tally.moduleParts(line).isEmpty();
            tally.change(Tally.without(tally.steps(List.of(line))));
        }
        tally.change(best);
    }

    /** @param among the parts to choose from */
    private void fillOneByOne(Tally tally, int line, Deadline deadline, IntPredicate among) {
        boolean onePart = require(line).populated().onePart();
        while (tally.missing(line) > 0 && !deadline.isOver()) {
            Map<Integer, List<Lot>> left = Leftovers.of(tally, Set.of(market.poolOf(line)));
            Set<Integer> settled = onePart ? tally.moduleParts(line) : Set.of();
            IntPredicate suits = part -> among.test(part) && (settled.isEmpty() || !market.isModule(part) || settled.contains(part));
            left.keySet().removeIf(part -> !suits.test(part));
            Pricer.Best best = best(tally, line, 1, left, deadline);
            boolean filled = best.column() != null && most(tally, columns.add(best.column()), left);
            if (!filled && !several(tally, line, left, deadline) && !shared(tally, line, left, suits, deadline)) {
                return;
            }
        }
    }

    /** As many machines of a column as cost about the same. */
    private static boolean most(Tally tally, Column column, Map<Integer, List<Lot>> left) {
        for (int times = Math.min(tally.missing(column.line()), alike(column, left)); times > 0; times /= 2) {
            if (tally.change(List.of(new Tally.Step(column, times)))) {
                return true;
            }
        }
        return false;
    }

    /** Lots that are sold only in numbers may be reached by several machines together: the fewest that do. */
    private boolean several(Tally tally, int line, Map<Integer, List<Lot>> left, Deadline deadline) {
        Pricer.Best best = best(tally, line, 1, singly(left), deadline);
        if (best.column() == null) {
            return false;
        }
        Column column = columns.add(best.column());
        for (int times = 2; times <= Math.min(tally.missing(line), MOST_TOGETHER); times++) {
            if (tally.change(List.of(new Tally.Step(column, times)))) {
                return true;
            }
        }
        return false;
    }

    /** A machine of lots that others would have to leave for those that only they accept. */
    private boolean shared(Tally tally, int line, Map<Integer, List<Lot>> left, IntPredicate suits, Deadline deadline) {
        int pool = market.poolOf(line);
        Map<Integer, List<Lot>> more = new HashMap<>();
        boolean any = false;
        for (int part = 0; part < market.parts(); part++) {
            int room = suits.test(part) ? tally.draws().room(part, pool, tally.need()) : 0;
            if (room > 0) {
                more.put(part, List.of(Pricer.lot(market.sku(part), room, market.cheapest(part, pool) / ScaledMoney.ONE)));
                any |= room > left.getOrDefault(part, List.of()).stream().mapToInt(Lot::available).sum();
            }
        }
        Pricer.Best best = any ? best(tally, line, 1, more, deadline) : null;
        return best != null && best.column() != null && most(tally, columns.add(best.column()), more);
    }

    /** The lots as if they were sold in any number. */
    private static Map<Integer, List<Lot>> singly(Map<Integer, List<Lot>> left) {
        Map<Integer, List<Lot>> singly = new HashMap<>();
        left.forEach((part, lots) -> singly.put(part, lots.stream().map(lot -> lot.with(lot.available(),
                List.of(new PriceBreak(1, lot.breaks().get(0).unitPrice(), lot.breaks().get(0).unitCost())))).toList()));
        return singly;
    }

    /** A uniform line takes one build for all machines, or for as many as are possible. */
    private void fillWhole(Tally tally, int line, Deadline deadline) {
        if (tally.missing(line) < market.line(line).machines()) {
            return;
        }
        Map<Integer, List<Lot>> left = Leftovers.of(tally, Set.of(market.poolOf(line)));
        int all = Math.min(tally.missing(line), mostOfOnePlatform(left));
        int can = 0;
        int cannot = all + 1;
        int tried = all;
        Column most = null;
        while (cannot - can > 1 && !deadline.isOver()) {
            Column column = together(tally, line, tried, left, deadline);
            if (column != null) {
                can = tried;
                most = column;
            } else {
                cannot = tried;
            }
            tried = (can + cannot) / 2;
        }
        // Where lots are sold only in numbers, some machines may be possible where fewer are not.
        boolean hopeless = can == 0 && best(tally, line, 1, singly(left), deadline).column() == null;
        Column more = null;
        for (int some = Math.min(all, can == 0 ? MOST_TOGETHER : can + FEW); !hopeless && some > can && more == null
                && !deadline.isOver(); some--) {
            more = together(tally, line, some, left, deadline);
        }
        if (more != null || most != null) {
            tally.change(List.of(new Tally.Step(more != null ? more : most, 1)));
        }
    }

    /** A given number of machines of one build; null where there are none. */
    private Column together(Tally tally, int line, int machines, Map<Integer, List<Lot>> left, Deadline deadline) {
        Pricer.Best best = best(tally, line, machines, left, deadline);
        Column column = best.column() == null ? null : columns.add(best.column());
        return column != null && tally.difference(List.of(new Tally.Step(column, 1))) < Draws.IMPOSSIBLE ? column : null;
    }

    /** No build of one platform is possible more often. */
    private int mostOfOnePlatform(Map<Integer, List<Lot>> left) {
        return (int) Math.min(Integer.MAX_VALUE / 4,
                market.catalog().platforms().stream().map(platform -> market.index().get(platform.sku()))
                .mapToLong(part -> left.getOrDefault(part, List.of()).stream().mapToLong(Lot::available).sum()).max().orElse(0));
    }

    /** How many such machines the first lots of each part still give, so that each costs about as much as the first. */
    private static int alike(Column column, Map<Integer, List<Lot>> left) {
        int times = Integer.MAX_VALUE;
        for (int i = 0; i < column.parts().length; i++) {
            List<Lot> lots = left.getOrDefault(column.parts()[i], List.of());
            List<Pick> picks = CheapestDraw.picks(lots, column.units()[i]);
            if (picks == null) {
                return 1;
            }
            for (Pick pick : picks) {
                times = Math.min(times, pick.lot().available() / pick.quantity());
            }
        }
        return Math.max(1, times);
    }
}
