package sledwright.book;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import sledwright.planner.allot.LotName;

/**
 * All promised machines, drawn anew from today's stock.
 *
 * @param promises each with what becomes of it, in the order in which they were kept
 * @param strained lots of which more is held for open quotes than there is
 * @param quality  how good it is
 * @param basis    what it rests on
 */
public record Allocated(List<Drawn> promises, List<Gone> strained, Quality quality, Basis basis) {

    /** What becomes of a promise. */
    public enum Fate {
        /** The same parts from the same lots. */
        SAME,
        /** The same parts, some from other lots. */
        MOVED,
        /** Other parts, with which everything is kept that the customer was told. */
        CHANGED,
        /** It cannot be kept. */
        BROKEN,
        /** Its parts have been picked. */
        PICKED;

        public String label() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * One promise.
     *
     * @param cost  what its machines cost at today's prices of their lots; empty: it cannot be kept, or is picked
     * @param lacks where it cannot be kept: what stands in the way of what the customer was told of
     * @param ways  where it cannot be kept: the nearest ways out
     * @param order the machines of an order; empty: it is of one request, or is picked
     */
    public record Drawn(SavedQuote quote, Fate fate, Optional<BigDecimal> cost, LotChange lots, List<String> lacks, List<String> ways,
                        Optional<KeptMachines> order) {

        public Drawn {
            lacks = List.copyOf(lacks);
            ways = List.copyOf(ways);
        }
    }

    /**
     * Units by lot.
     *
     * @param units what is taken from each
     * @param kept  what was kept of each
     */
    public record LotChange(Map<LotName, Integer> units, Map<LotName, Integer> kept) {

        public LotChange {
            units = Map.copyOf(units);
            kept = Map.copyOf(kept);
        }

        /** Units that are taken from lots of which they were not kept; in place of those given back. */
        public Map<LotName, Integer> fresh() {
            return beyond(units, kept);
        }

        /** Units that were kept and are taken no more. */
        public Map<LotName, Integer> given() {
            return beyond(kept, units);
        }

        private static Map<LotName, Integer> beyond(Map<LotName, Integer> some, Map<LotName, Integer> others) {
            Map<LotName, Integer> beyond = new TreeMap<>();
            some.forEach((lot, units) -> {
                if (units > others.getOrDefault(lot, 0)) {
                    beyond.put(lot, units - others.getOrDefault(lot, 0));
                }
            });
            return beyond;
        }
    }

    /** How many machines are not delivered and changed, and what the others cost. */
    public record Figures(int broken, int changed, BigDecimal cost) {
    }

    /**
     * How good it is.
     *
     * @param greedy  if each promise in turn had taken the cheapest that was left
     * @param bound   no allocation leaves fewer machines undelivered; none that leaves as few changes fewer; none of these costs less. The
     *                cost is empty where no bound is known
     * @param seconds that it took
     */
    public record Quality(Figures found, Figures greedy, int leastBroken, int leastChanged, Optional<BigDecimal> leastCost, String currency,
                          double seconds) {
    }

    /** What the book and the catalogue were like. */
    record Basis(BookStand stand, String digest) {
    }

    public Allocated {
        promises = List.copyOf(promises);
        strained = List.copyOf(strained);
    }

    /** Whether every promise is kept. */
    public boolean isWhole() {
        return promises.stream().noneMatch(one -> one.fate() == Fate.BROKEN);
    }
}
