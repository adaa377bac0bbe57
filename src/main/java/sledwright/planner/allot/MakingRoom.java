package sledwright.planner.allot;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.optaplanner.core.api.score.director.ScoreDirector;
import org.optaplanner.core.impl.heuristic.selector.move.factory.MoveIteratorFactory;

/**
 * Moves for promises that are in each other's way: one is kept in some other way, whoever holds a unit that this takes gives way, and those
 * are kept again as well as the rest of the stock allows; what is free then goes to promises that nobody kept. A single change of one or
 * two promises would take units that are not there, and never be accepted.
 */
public final class MakingRoom implements MoveIteratorFactory<AllotmentPlan, GivingMove> {

    /** Of so many moves one begins with a promise that is not kept as it was told, as long as there is one; the rest with any. */
    private static final double OF_UNHAPPY = 0.7;

    /** How often the second best is taken, so that not every move leads back. */
    private static final double SECOND_BEST = 0.15;

    private static final int MOST_OFFERED = 8;

    @Override
    public long getSize(ScoreDirector<AllotmentPlan> director) {
        return director.getWorkingSolution().promises().stream().mapToLong(one -> one.ways().size()).sum();
    }

    @Override
    public Iterator<GivingMove> createOriginalMoveIterator(ScoreDirector<AllotmentPlan> director) {
        throw new UnsupportedOperationException("moves are drawn by chance");
    }

    @Override
    public Iterator<GivingMove> createRandomMoveIterator(ScoreDirector<AllotmentPlan> director, Random random) {
        Stand stand = new Stand(director.getWorkingSolution(), random);
        return new Iterator<>() {
            @Override
            public boolean hasNext() {
                return !stand.open.isEmpty();
            }

            @Override
            public GivingMove next() {
                return stand.move();
            }
        };
    }

    /** How the promises are kept, and what is left of each lot. */
    private static final class Stand {

        private final Random random;
        private final List<PromisedMachines> open;
        private final List<PromisedMachines> unhappy;
        private final Map<LotName, List<PromisedMachines>> holders = new HashMap<>();
        private final Map<LotName, Integer> left = new HashMap<>();

        Stand(AllotmentPlan plan, Random random) {
            this.random = random;
            open = plan.promises().stream().filter(PromisedMachines::isOpen).toList();
            unhappy = open.stream().filter(one -> isUnhappy(one)).toList();
            plan.lots().forEach(lot -> left.put(lot.name(), lot.lot().available()));
            plan.promises().forEach(one -> one.filling().takes().forEach(take -> {
                left.merge(take.lot(), -take.units(), Integer::sum);
                if (one.isOpen()) {
                    holders.computeIfAbsent(take.lot(), lot -> new ArrayList<>()).add(one);
                }
            }));
        }

        private static boolean isUnhappy(PromisedMachines one) {
            return one.filling().order().isEmpty() || one.filling().changes(one.promise());
        }

        GivingMove move() {
            boolean helps = !unhappy.isEmpty() && random.nextDouble() < OF_UNHAPPY;
            PromisedMachines first = any(helps ? unhappy : open);
            Filling way = any(first.ways());
            Map<PromisedMachines, Filling> given = new LinkedHashMap<>();
            Map<LotName, Integer> moved = new HashMap<>();
            put(first, way, given, moved);
            List<PromisedMachines> out = new ArrayList<>();
            for (Filling.Take take : way.takes()) {
                List<PromisedMachines> holding = new ArrayList<>(holders.getOrDefault(take.lot(), List.of()));
                while (left(take.lot(), moved) < 0 && !holding.isEmpty()) {
                    PromisedMachines one = holding.remove(random.nextInt(holding.size()));
                    if (!given.containsKey(one)) {
                        put(one, Filling.NONE, given, moved);
                        out.add(one);
                    }
                }
            }
            Collections.shuffle(out, random);
            out.forEach(one -> put(one, best(one, moved), given, moved));
            for (int i = 0; i < Math.min(MOST_OFFERED, unhappy.size()); i++) {
                PromisedMachines one = any(unhappy);
                if (!given.containsKey(one) && one.filling().order().isEmpty()) {
                    Filling kept = best(one, moved);
                    if (kept.order().isPresent()) {
                        put(one, kept, given, moved);
                    }
                }
            }
            return new GivingMove(given);
        }

        private int left(LotName lot, Map<LotName, Integer> moved) {
            return left.getOrDefault(lot, 0) + moved.getOrDefault(lot, 0);
        }

        private static void put(PromisedMachines one, Filling way, Map<PromisedMachines, Filling> given, Map<LotName, Integer> moved) {
            given.getOrDefault(one, one.filling()).takes().forEach(take -> moved.merge(take.lot(), take.units(), Integer::sum));
            way.takes().forEach(take -> moved.merge(take.lot(), -take.units(), Integer::sum));
            given.put(one, way);
        }

        /** The best way for which there is room; none: the promise is not kept. */
        private Filling best(PromisedMachines one, Map<LotName, Integer> moved) {
            List<Filling> fitting = one.ways().stream().filter(way -> way.order().isPresent()
                    && way.takes().stream().allMatch(take -> take.units() <= left(take.lot(), moved)))
                    .sorted(Comparator.comparing(way -> Allotment.Figures.of(one.promise(), way))).limit(2).toList();
            return fitting.isEmpty() ? Filling.NONE
                    : fitting.get(fitting.size() > 1 && random.nextDouble() < SECOND_BEST ? 1 : 0);
        }

        private <A> A any(List<A> some) {
            return some.get(random.nextInt(some.size()));
        }
    }
}
