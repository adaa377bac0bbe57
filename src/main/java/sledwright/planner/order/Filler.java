package sledwright.planner.order;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sledwright.domain.Lot;
import sledwright.domain.Lot.PriceBreak;
import sledwright.domain.Pick;
import sledwright.generator.Deadline;

/** Fills what an order still lacks, machine by machine, each the cheapest from what the stock still has. */
final class Filler {

    private final Market market;
    private final Pricer pricer;
    private final Generation columns;

    /** @param columns takes up what is found */
    Filler(Market market, Pricer pricer, Generation columns) {
        this.market = market;
        this.pricer = pricer;
        this.columns = columns;
    }

    /** Fills the lines in some order as far as the stock and the time go. */
    void fill(Tally tally, List<Integer> lines, Deadline deadline) {
        for (int line : lines) {
            if (market.line(line).uniform()) {
                fillWhole(tally, line, deadline);
            } else {
                fillOneByOne(tally, line, deadline);
            }
        }
    }

    /** The cheapest machine of a line from what the stock still has. */
    Pricer.Best alone(Tally tally, int line, Deadline deadline) {
        return pricer.best(line, 1, offers(tally, line, left(tally, market.poolOf(line))), deadline);
    }

    private void fillOneByOne(Tally tally, int line, Deadline deadline) {
        while (tally.missing(line) > 0 && !deadline.isOver()) {
            Map<Integer, List<Lot>> left = left(tally, market.poolOf(line));
            Pricer.Best best = pricer.best(line, 1, offers(tally, line, left), deadline);
            if (best.column() == null) {
                return;
            }
            Column column = columns.add(best.column());
            int times = Math.min(tally.missing(line), alike(column, left));
            while (times > 0 && !tally.change(List.of(new Tally.Step(column, times)))) {
                times /= 2;
            }
            if (times == 0) {
                return;
            }
        }
    }

    /** A uniform line takes one build for all machines, or for as many as can be had. */
    private void fillWhole(Tally tally, int line, Deadline deadline) {
        if (tally.missing(line) < market.line(line).machines()) {
            return;
        }
        Map<Integer, List<Lot>> left = left(tally, market.poolOf(line));
        int can = 0;
        int cannot = tally.missing(line) + 1;
        int tried = cannot - 1;
        Column most = null;
        while (cannot - can > 1 && !deadline.isOver()) {
            Pricer.Best best = pricer.best(line, tried, offers(tally, line, left), deadline);
            Column column = best.column() == null ? null : columns.add(best.column());
            if (column != null && tally.difference(List.of(new Tally.Step(column, 1))) < Draws.IMPOSSIBLE) {
                can = tried;
                most = column;
            } else {
                cannot = tried;
            }
            tried = (can + cannot) / 2;
        }
        if (most != null) {
            tally.change(List.of(new Tally.Step(most, 1)));
        }
    }

    /** How many such machines the first lots of each part still give, so that each costs about as much as the first. */
    private static int alike(Column column, Map<Integer, List<Lot>> left) {
        int times = Integer.MAX_VALUE;
        for (int i = 0; i < column.parts().length; i++) {
            List<Lot> lots = left.getOrDefault(column.parts()[i], List.of());
            List<Pick> picks = sledwright.metrics.CheapestDraw.picks(lots, column.units()[i]);
            if (picks == null) {
                return 1;
            }
            for (Pick pick : picks) {
                times = Math.min(times, pick.lot().available() / pick.quantity());
            }
        }
        return Math.max(1, times);
    }

    /** What is left of each part's lots, unscaled. */
    private Map<Integer, List<Lot>> left(Tally tally, int pool) {
        Map<Integer, List<Lot>> left = new HashMap<>();
        for (int part = 0; part < market.parts(); part++) {
            Map<Lot, Integer> taken = new HashMap<>();
            if (isNeeded(tally.need(), part)) {
                tally.draws().picks(part, tally.need()).values()
                        .forEach(picks -> picks.forEach(pick -> taken.merge(pick.lot(), pick.quantity(), Integer::sum)));
            }
            List<Lot> lots = new ArrayList<>();
            for (Source source : market.sources(part)) {
                if (source.pools()[pool] && tally.draws().isOpen(source)) {
                    Lot rest = Draws.rest(source.lot(), taken.getOrDefault(source.lot(), 0));
                    if (rest != null) {
                        lots.add(rest);
                    }
                }
            }
            if (!lots.isEmpty()) {
                left.put(part, lots);
            }
        }
        return left;
    }

    private static boolean isNeeded(int[][] need, int part) {
        for (int[] pool : need) {
            if (pool[part] > 0) {
                return true;
            }
        }
        return false;
    }

    private Pricer.Offers offers(Tally tally, int line, Map<Integer, List<Lot>> left) {
        return variant -> {
            long place = variant.bay() == null ? 0 : place(tally, variant.bay(), line, left);
            Map<String, List<Lot>> offers = new HashMap<>();
            left.forEach((part, lots) -> {
                String sku = market.sku(part);
                long more = variant.platforms().contains(sku) ? place : 0;
                if (place < Draws.IMPOSSIBLE || more == 0) {
                    offers.put(sku, lots.stream().map(lot -> scaled(lot, more)).toList());
                }
            });
            return offers;
        };
    }

    private static Lot scaled(Lot lot, long more) {
        return lot.with(lot.available(), lot.breaks().stream()
                .map(step -> new PriceBreak(step.minQuantity(), step.unitPrice() * Scale.ONE + more, step.unitCost())).toList());
    }

    /** What a place in an enclosure takes: nothing where one has a bay free, else its share of a new one. */
    private long place(Tally tally, Bay bay, int line, Map<Integer, List<Lot>> left) {
        long[] loads = tally.loads(bay);
        List<List<Integer>> packed = Packing.pack(loads, bay);
        if (packed.stream().anyMatch(some -> some.size() < bay.bays())) {
            return 0;
        }
        long enclosure = cheapest(left, bay.enclosure().sku());
        long supply = cheapest(left, bay.supply().sku());
        return enclosure >= Draws.IMPOSSIBLE || supply >= Draws.IMPOSSIBLE ? Draws.IMPOSSIBLE
                : (enclosure + supply * bay.supply().count()) / Math.max(1, Math.min(bay.bays(), tally.missing(line)));
    }

    private long cheapest(Map<Integer, List<Lot>> left, String sku) {
        return left.getOrDefault(market.index().get(sku), List.of()).stream().flatMap(lot -> lot.breaks().stream())
                .mapToLong(step -> step.unitPrice() * Scale.ONE).min().orElse(Draws.IMPOSSIBLE);
    }
}
