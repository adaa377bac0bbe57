package sledwright.planner.allot;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.optaplanner.core.api.score.ScoreExplanation;
import org.optaplanner.core.api.score.buildin.bendablelong.BendableLongScore;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.generator.time.Deadline;
import sledwright.planner.DefectException;
import sledwright.planner.allot.AllotmentConstraints.Matter;
import sledwright.planner.allot.AllotmentConstraints.Why;
import sledwright.planner.allot.AllotmentOutcome.Bound;
import sledwright.planner.allot.AllotmentOutcome.Times;
import sledwright.planner.allot.FillingSearch.Offer;

/**
 * Draws promised machines anew from the stock of a day. First each promise in turn takes the cheapest; column generation then finds ways
 * that fit together and the bound; OptaPlanner chooses among all of them; and what it leaves on the shelf is offered once more to each.
 */
public final class Allotter {

    private static final int MOST_ROUNDS = 4;

    /** How often room is made for a promise that is not kept as it was told between two rounds, and the most searches for that. */
    private static final int TRIES = 4;
    private static final int MOST_SEARCHES = 600;

    /** Of so few promises room is also made for one that is kept, but could cost less. */
    private static final int FEW = 12;

    /** How many others give their units back for it. */
    private static final int MOST_RIVALS = 4;

    private final FillingSearch search;
    private final Map<LotName, Integer> available = new TreeMap<>();
    private final Supplier<List<AllotmentChange>> news;
    private final Consumer<String> doing;
    private final long seed;
    private final FillingPool pool = new FillingPool();
    private final List<Promise> promises;
    private final Map<Promise, Double> ideal = new HashMap<>();
    private int leastBroken;

    /**
     * @param shop     what there is for these promises today: what others hold is not in it
     * @param promises in the order in which they are kept where not all can be
     * @param seed     decides as before with the same, where time does not run out
     * @param news     what has happened since it was last asked for
     * @param doing    hears what is being done
     */
    public Allotter(Catalog shop, List<Promise> promises, long seed, Supplier<List<AllotmentChange>> news, Consumer<String> doing) {
        this.promises = new ArrayList<>(promises);
        this.seed = seed;
        this.news = news;
        this.doing = doing;
        search = new FillingSearch(shop);
        search.lots().forEach((name, lot) -> available.put(name, lot.available()));
        // What is gone already is gone, whatever the list of stock says.
        pinned().forEach((lot, units) -> available.merge(lot, units, Math::max));
    }

    private Map<LotName, Integer> pinned() {
        Map<LotName, Integer> gone = new TreeMap<>();
        promises.stream().filter(Promise::pinned)
                .forEach(promise -> promise.kept().forEach((lot, units) -> gone.merge(lot, units, Integer::sum)));
        return gone;
    }

    private List<Promise> open() {
        return promises.stream().filter(promise -> !promise.pinned()).toList();
    }

    /** What is decided until the deadline. */
    public AllotmentOutcome run(Deadline deadline) {
        long start = System.nanoTime();
        doing.accept("each promise in turn takes the cheapest that is left");
        Allotment best = greedily(deadline);
        Allotment.Figures greedy = best.figures();
        double greedySeconds = (System.nanoTime() - start) / 1e9;
        AllotmentSolving solving = new AllotmentSolving(search.lots(), seed, news);
        double deciding = 0;
        Random random = new Random(seed);
        Bound bound = null;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            Allotment.Figures before = best.figures();
            doing.accept("what no draw goes below, and ways that fit together");
            bound = bound(before, deadline.share(2));
            if (deadline.isOver()) {
                break;
            }
            doing.accept("choosing among the ways that were found");
            long began = System.nanoTime();
            AllotmentSolving.Decided decided = solving.solve(best, pool, available, isReached(before, bound), deadline.share(2));
            boolean moved = !decided.changes().isEmpty();
            decided.changes().forEach(this::happen);
            Allotment now = refined(sound(decided.allotment()), deadline);
            if (!isReached(now.figures(), bound)) {
                doing.accept("making room for promises that are not kept as they were told");
                now = crowded(now, random, deadline.share(3));
            }
            deciding += (System.nanoTime() - began) / 1e9;
            boolean better = now.figures().compareTo(before) < 0;
            best = better || moved ? now : best;
            if (!better && !moved) {
                break;
            }
            bound = null;
        }
        bound = bound == null ? bound(best.figures(), deadline) : bound;
        double seconds = (System.nanoTime() - start) / 1e9;
        return outcome(best, greedy, bound, solving, new Times(greedySeconds, seconds - greedySeconds - deciding, deciding));
    }

    private static boolean isReached(Allotment.Figures found, Bound bound) {
        return found.broken() <= bound.broken() && found.changed() <= bound.changed() && found.cost() <= Math.ceil(bound.cost() - 0.01);
    }

    /** Each promise in turn takes the cheapest that is left: of what the customer was told of, else of anything. */
    private Allotment greedily(Deadline deadline) {
        Allotment none = new Allotment(promises.stream().collect(LinkedHashMap::new, (map, promise) -> map.put(promise,
                promise.pinned() ? Filling.picked(promise.kept()) : Filling.NONE), Map::putAll));
        return given(none, deadline);
    }

    private Allotment given(Allotment some, Deadline deadline) {
        Allotment now = some;
        Map<LotName, Integer> taken = new HashMap<>(now.taken());
        for (Promise promise : open()) {
            if (now.fillings().get(promise).order().isEmpty()) {
                Optional<Filling> filling = cheapest(promise, taken, deadline);
                if (filling.isPresent()) {
                    now = now.with(promise, filling.get());
                    filling.get().takes().forEach(take -> taken.merge(take.lot(), take.units(), Integer::sum));
                }
            }
        }
        return now;
    }

    private Optional<Filling> cheapest(Promise promise, Map<LotName, Integer> taken, Deadline deadline) {
        Offer offer = Offer.of(lot -> left(lot, taken));
        Offer own = Offer.of(lot -> Math.min(left(lot, taken), promise.kept().getOrDefault(lot, 0)));
        Optional<Filling> told = Stream.of(own, offer).flatMap(some -> search.find(promise, some, true, deadline).filling().stream())
                .min(Comparator.comparing(way -> Allotment.Figures.of(promise, way)));
        Optional<Filling> filling = told.isPresent() ? told : search.find(promise, offer, false, deadline).filling();
        filling.ifPresent(way -> pool.add(promise, way));
        return filling;
    }

    private int left(LotName lot, Map<LotName, Integer> taken) {
        return available.getOrDefault(lot, 0) - taken.getOrDefault(lot, 0);
    }

    /** What happened becomes part of what is decided from now on. */
    private void happen(AllotmentChange change) {
        leastBroken = 0;
        if (change instanceof AllotmentChange.OfLot of) {
            available.put(of.lot(), of.available());
            pinned().forEach((lot, units) -> available.merge(lot, units, Math::max));
        } else if (change instanceof AllotmentChange.Picked picked) {
            promises.replaceAll(promise -> !promise.name().equals(picked.promise()) ? promise
                    : new Promise(promise.name(), promise.request(), promise.parts(), promise.kept(), true));
        } else if (change instanceof AllotmentChange.Over over) {
            promises.removeIf(promise -> promise.name().equals(over.promise()));
        }
    }

    /** The same as far as there is stock for it; where something happened that nobody could mend, the later promise gives way. */
    private Allotment sound(Allotment some) {
        Map<LotName, Integer> taken = new HashMap<>(pinned());
        Map<String, Filling> decided = new HashMap<>();
        some.fillings().forEach((promise, filling) -> decided.put(promise.name(), filling));
        Map<Promise, Filling> sound = new LinkedHashMap<>();
        for (Promise promise : promises) {
            Filling filling = promise.pinned() ? Filling.picked(promise.kept()) : decided.getOrDefault(promise.name(), Filling.NONE);
            boolean fits = promise.pinned() || filling.takes().stream().allMatch(take -> take.units() <= left(take.lot(), taken));
            sound.put(promise, fits ? filling : Filling.NONE);
            if (fits && !promise.pinned()) {
                filling.takes().forEach(take -> taken.merge(take.lot(), take.units(), Integer::sum));
            }
        }
        return new Allotment(sound);
    }

    /** Whatever is left is offered to each promise beside what it has, until none is better off. */
    private Allotment refined(Allotment some, Deadline deadline) {
        Allotment now = given(some, deadline);
        boolean better = true;
        for (int pass = 0; better && pass < MOST_ROUNDS && !deadline.isOver(); pass++) {
            better = false;
            for (Promise promise : open()) {
                if (isIdeal(promise, now.fillings().get(promise), deadline)) {
                    continue;
                }
                Map<LotName, Integer> taken = new HashMap<>(now.taken());
                now.fillings().get(promise).takes().forEach(take -> taken.merge(take.lot(), -take.units(), Integer::sum));
                Optional<Filling> filling = deadline.isOver() ? Optional.empty() : cheapest(promise, taken, deadline);
                Allotment.Figures before = Allotment.Figures.of(promise, now.fillings().get(promise));
                if (filling.isPresent() && Allotment.Figures.of(promise, filling.get()).compareTo(before) < 0) {
                    now = now.with(promise, filling.get());
                    better = true;
                }
            }
        }
        return now;
    }

    /** Whether nothing better could be given if nobody else took anything. */
    private boolean isIdeal(Promise promise, Filling filling, Deadline deadline) {
        if (filling.order().isEmpty() || filling.changes(promise) || deadline.isOver()) {
            return false;
        }
        return filling.cost() <= ideal.computeIfAbsent(promise, one ->
                search.find(one, Offer.of(lot -> left(lot, Map.of())), true, deadline).least());
    }

    /**
     * For promises that are not kept as they were told some others give their units back, and all of them are searched for anew in what
     * that leaves; better where all together are. What is found on the way is known from then on, too.
     */
    private Allotment crowded(Allotment some, Random random, Deadline deadline) {
        Allotment now = some;
        int searches = 0;
        for (int turn = 0; turn < TRIES && searches < MOST_SEARCHES && !deadline.isOver(); turn++) {
            for (Promise promise : open()) {
                Filling stands = now.fillings().get(promise);
                boolean good = stands.order().isPresent() && !stands.changes(promise)
                        && (open().size() > FEW || isIdeal(promise, stands, deadline));
                if (searches >= MOST_SEARCHES || deadline.isOver() || good) {
                    continue;
                }
                List<Promise> freed = new ArrayList<>(rivals(promise, now, random));
                searches += 1 + freed.size();
                freed.add(0, promise);
                Allotment other = now;
                for (Promise one : freed) {
                    other = other.with(one, Filling.NONE);
                }
                for (Promise one : freed) {
                    Optional<Filling> way = cheapest(one, other.taken(), deadline);
                    other = way.isPresent() ? other.with(one, way.get()) : other;
                }
                now = other.figures().compareTo(now.figures()) < 0 ? other : now;
            }
        }
        return now;
    }

    /** A few promises that hold what this one was told of. */
    private List<Promise> rivals(Promise promise, Allotment now, Random random) {
        List<Promise> rivals = new ArrayList<>(open().stream().filter(other -> other != promise
                && now.fillings().get(other).takes().stream().anyMatch(take -> promise.parts().containsKey(take.lot().sku()))).toList());
        Collections.shuffle(rivals, random);
        return rivals.subList(0, Math.min(rivals.size(), 1 + random.nextInt(MOST_RIVALS)));
    }

    private Bound bound(Allotment.Figures found, Deadline deadline) {
        Map<LotName, Integer> left = new TreeMap<>(available);
        pinned().forEach((lot, units) -> left.merge(lot, -units, Integer::sum));
        AllotmentBound bounds = new AllotmentBound(search, open(), pool, left);
        if (found.broken() > leastBroken) {
            // What nobody can deliver does not depend on what was found.
            leastBroken = Math.max(leastBroken, (int) bounds.of(AllotmentAim.leastBroken(), deadline.share(3)));
        }
        int broken = Math.min(leastBroken, found.broken());
        int changed = found.changed() == 0 ? 0 : (int) bounds.of(AllotmentAim.leastChanged(found.broken()), deadline.share(2));
        double cost = bounds.of(AllotmentAim.leastCost(found.broken(), found.changed()), deadline);
        return new Bound(broken, changed, Double.isInfinite(cost) ? Double.NaN : cost);
    }

    private AllotmentOutcome outcome(Allotment best, Allotment.Figures greedy, Bound bound, AllotmentSolving solving, Times times) {
        ScoreExplanation<AllotmentPlan, BendableLongScore> explained = solving.explain(best, available);
        if (explained.getScore().hardScore(0) != 0) {
            throw new DefectException("Promises were drawn against the rules:\n" + explained.getSummary());
        }
        Map<String, Map<Matter, Long>> why = new HashMap<>();
        explained.getJustificationList(Why.class).forEach(one -> why.computeIfAbsent(one.promise(), name -> new HashMap<>())
                .put(one.matter(), one.amount()));
        List<AllotmentOutcome.Outcome> outcomes = new ArrayList<>();
        best.fillings().forEach((promise, filling) -> {
            Map<Matter, Long> said = why.getOrDefault(promise.name(), Map.of());
            Set<Matter> matters = said.isEmpty() ? EnumSet.noneOf(Matter.class) : EnumSet.copyOf(said.keySet());
            outcomes.add(new AllotmentOutcome.Outcome(promise, matters.contains(Matter.BROKEN) ? Optional.empty() : Optional.of(filling),
                    matters.contains(Matter.CHANGED), Math.toIntExact(said.getOrDefault(Matter.MOVED, 0L))));
        });
        Map<LotName, Integer> taken = best.taken();
        Map<LotName, Lot> left = new TreeMap<>();
        search.lots().forEach((name, lot) -> left.put(name, lot.with(Math.max(0, left(name, taken)), lot.breaks())));
        return new AllotmentOutcome(greedy, best.figures(), bound, outcomes, left, times);
    }

    /** The shop with what is left. */
    public static Catalog left(AllotmentOutcome outcome, Catalog shop) {
        return shop.withEachLot(lot -> outcome.left().getOrDefault(LotName.of(lot), lot));
    }
}
