package sledwright.planner.allot;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;

/**
 * What every promise is given.
 *
 * @param fillings by the promise, in the order in which they were made
 */
public record Allotment(Map<Promise, Filling> fillings) {

    /** How good one is: fewer machines undelivered, then fewer changed, then less cost, then fewer units from elsewhere. */
    public record Figures(int broken, int changed, long cost, long moved) implements Comparable<Figures> {

        private static final Comparator<Figures> ORDER = Comparator.comparingInt(Figures::broken).thenComparingInt(Figures::changed)
                .thenComparingLong(Figures::cost).thenComparingLong(Figures::moved);

        static Figures of(Promise promise, Filling filling) {
            return new Figures(filling.order().isEmpty() ? promise.machines() : 0, filling.changes(promise) ? promise.machines() : 0,
                    filling.cost(), filling.moved(promise));
        }

        private Figures and(Figures other) {
            return new Figures(broken + other.broken, changed + other.changed, cost + other.cost, moved + other.moved);
        }

        @Override
        public int compareTo(Figures other) {
            return ORDER.compare(this, other);
        }
    }

    public Allotment {
        fillings = new LinkedHashMap<>(fillings);
    }

    /** Counted over the promises that may still change. */
    public Figures figures() {
        return fillings.entrySet().stream().filter(one -> !one.getKey().pinned()).map(one -> Figures.of(one.getKey(), one.getValue()))
                .reduce(new Figures(0, 0, 0, 0), Figures::and);
    }

    /** Units that are taken of each lot. */
    Map<LotName, Integer> taken() {
        Map<LotName, Integer> taken = new TreeMap<>();
        fillings.values().forEach(filling -> filling.takes().forEach(take -> taken.merge(take.lot(), take.units(), Integer::sum)));
        return taken;
    }

    Allotment with(Promise promise, Filling filling) {
        Map<Promise, Filling> other = new LinkedHashMap<>(fillings);
        other.put(promise, filling);
        return new Allotment(other);
    }
}
