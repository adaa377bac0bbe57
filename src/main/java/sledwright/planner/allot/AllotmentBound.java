package sledwright.planner.allot;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import sledwright.generator.time.Deadline;
import sledwright.planner.allot.FillingSearch.Found;
import sledwright.planner.allot.FillingSearch.Offer;

/**
 * What no allotment goes below, by column generation: the linear program over the ways known prices the lots, and the exact search finds
 * for every kind of promise the way that counts least at these prices. At any prices of lots, the sum of these less what all units of the
 * lots are worth is a bound.
 */
final class AllotmentBound {

    private static final int MOST_ROUNDS = 200;

    private final FillingSearch search;
    private final Map<Promise, Integer> kinds = new LinkedHashMap<>();
    private final FillingPool pool;
    private final Map<LotName, Integer> left;
    private final Map<Key, Found> unpriced = new ConcurrentHashMap<>();

    private record Key(Promise.Kind kind, boolean told, boolean free) {
    }

    /** @param left units that there are of each lot for these promises */
    AllotmentBound(FillingSearch search, List<Promise> promises, FillingPool pool, Map<LotName, Integer> left) {
        this.search = search;
        this.pool = pool;
        this.left = left;
        Map<Promise.Kind, Promise> first = new HashMap<>();
        promises.forEach(promise -> kinds.merge(first.computeIfAbsent(promise.kind(), kind -> promise), 1, Integer::sum));
    }

    /**
     * The bound of a figure, rounded up where it is a number of machines; adds to the pool what was found on the way. Until the deadline it
     * is only as good as it got.
     */
    double of(AllotmentAim aim, Deadline deadline) {
        double bound = Double.NEGATIVE_INFINITY;
        AllotmentMaster master = new AllotmentMaster(kinds, pool, left);
        for (int round = 0; round < MOST_ROUNDS && !deadline.isOver(); round++) {
            AllotmentMaster.Duals duals = round == 0 && !isSeeded() ? new AllotmentMaster.Duals(Double.MAX_VALUE, Map.of(), 0, 0)
                    : master.solve(aim, deadline);
            if (duals == null) {
                break;
            }
            boolean[] fresh = new boolean[1];
            double now = priced(aim, duals, fresh, deadline);
            bound = Math.max(bound, now);
            if (!fresh[0] || isReached(bound, duals.cost(), aim)) {
                break;
            }
        }
        return aim.isFree() ? Math.max(0, Math.ceil(bound - 1e-6)) : bound;
    }

    private boolean isSeeded() {
        return kinds.keySet().stream().anyMatch(promise -> !pool.of(promise).isEmpty());
    }

    private static boolean isReached(double bound, double cost, AllotmentAim aim) {
        return aim.isFree() ? Math.ceil(bound - 1e-6) >= Math.ceil(cost - 1e-6) : bound >= cost - 0.5;
    }

    private record Cheapest(Promise promise, int count, double least, List<Found> found) {
    }

    private double priced(AllotmentAim aim, AllotmentMaster.Duals duals, boolean[] fresh, Deadline deadline) {
        long scale = aim.scale();
        Map<LotName, Long> worth = new HashMap<>();
        duals.lots().forEach((lot, value) -> {
            if (Math.round(value * scale) > 0) {
                worth.put(lot, Math.round(value * scale));
            }
        });
        double broken = duals.broken() * scale;
        double changed = duals.changed() * scale;
        List<Cheapest> all = kinds.entrySet().parallelStream()
                .map(kind -> cheapest(kind.getKey(), kind.getValue(), aim, worth, broken, changed, deadline)).collect(Collectors.toList());
        double bound = 0;
        for (Cheapest one : all) {
            bound += one.count() * one.least();
            for (Found found : one.found()) {
                fresh[0] |= found.filling().isPresent() && pool.add(one.promise(), found.filling().get());
            }
        }
        for (Map.Entry<LotName, Long> lot : worth.entrySet()) {
            bound -= (double) lot.getValue() * left.getOrDefault(lot.getKey(), 0);
        }
        bound -= aim.mostBroken() == Integer.MAX_VALUE ? 0 : broken * aim.mostBroken();
        bound -= aim.mostChanged() == Integer.MAX_VALUE ? 0 : changed * aim.mostChanged();
        return bound / scale;
    }

    private Cheapest cheapest(Promise promise, int count, AllotmentAim aim, Map<LotName, Long> worth, double broken, double changed,
                              Deadline deadline) {
        double least = aim.mostBroken() == 0 ? Double.POSITIVE_INFINITY
                : aim.ofBroken(promise) * (double) aim.scale() + broken * promise.machines();
        double more = aim.ofChanged(promise) * (double) aim.scale() + changed * promise.machines();
        List<Found> found = new ArrayList<>();
        if (aim.figure() != AllotmentAim.Figure.BROKEN) {
            found.add(priced(promise, aim, worth, true, deadline));
            least = Math.min(least, found.get(0).least());
        }
        if (aim.mostChanged() > 0 && more < least) {
            found.add(priced(promise, aim, worth, false, deadline));
            least = Math.min(least, found.get(found.size() - 1).least() + more);
        }
        return new Cheapest(promise, count, least, found);
    }

    /** What counts least at no prices of lots still does where it takes none of those that have one. */
    private Found priced(Promise promise, AllotmentAim aim, Map<LotName, Long> worth, boolean told, Deadline deadline) {
        Key key = new Key(promise.kind(), told, aim.isFree());
        Found plain = unpriced.get(key);
        if (plain == null) {
            plain = search.find(promise, new Offer(this::left, lot -> 0, aim.isFree()), told, deadline);
            unpriced.put(key, plain);
        }
        if (plain.filling().isEmpty() || plain.filling().get().takes().stream().noneMatch(take -> worth.containsKey(take.lot()))) {
            return plain;
        }
        return search.find(promise, new Offer(this::left, lot -> worth.getOrDefault(lot, 0L), aim.isFree()), told, deadline);
    }

    private int left(LotName lot) {
        return left.getOrDefault(lot, 0);
    }
}
