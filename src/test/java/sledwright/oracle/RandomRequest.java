package sledwright.oracle;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.SplittableRandom;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Equipment;
import sledwright.domain.Goal;
import sledwright.domain.Licence;
import sledwright.domain.Limits;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryNeeds;
import sledwright.domain.Objective;
import sledwright.domain.Part;
import sledwright.domain.PartChoice;
import sledwright.domain.ProcessorNeeds;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Shortlist;
import sledwright.domain.Worth;

/** Random requests; a figure is often one that a build reaches exactly. */
final class RandomRequest {

    /** The least total needs a price of electricity, with which it is drawn by itself. */
    static final Objective[] DRAWN = Arrays.stream(Objective.values()).filter(one -> one != Objective.LEAST_TOTAL).toArray(Objective[]::new);

    private final SplittableRandom random;
    private final boolean large;
    private final Catalog catalog;
    private final List<String> skus;
    private final double rigour;

    RandomRequest(SplittableRandom random, RandomCase.Size size, Catalog catalog) {
        this.random = random;
        large = size == RandomCase.Size.SOLVABLE;
        this.catalog = catalog;
        rigour = pick(0.2, 0.5, 0.5, 1.0);
        skus = catalog.parts().stream().map(Part::sku).toList();
    }

    Request request(int machines) {
        Set<String> platforms = chance(0.85) ? Set.of() : Set.of(catalog.platforms().iterator().next().sku());
        Objective objective = large ? pick(Objective.CHEAPEST, Objective.CHEAPEST, Objective.MOST_MEMORY, Objective.MOST_THROUGHPUT)
                : chance(0.4) ? Objective.CHEAPEST : pick(DRAWN);
        Worth worth = objective == Objective.BEST_VALUE || chance(0.1)
                ? new Worth(between(0, 6) * 250, between(0, 4) * 50, between(0, 4) * 75, between(0, 4) * 120) : Worth.NOTHING;
        Licence licence = chance(0.85) ? Licence.NONE : new Licence(between(0, 10) * 100, between(0, 4) * 1000);
        Limits limit = limits(machines, objective);
        return new Request("random", machines, requirements(), limit, new Goal(objective, worth, licence),
                new Shortlist(between(1, 6), pick(0.0, 0.05, 0.05, 0.2)), new PartChoice(platforms, some(0.1), some(0.12), onHand(), Equipment.NONE));
    }

    private Requirements requirements() {
        MemoryMode mode = asks(0.25) ? pick(MemoryMode.MIRRORED, MemoryMode.RANK_SPARING) : MemoryMode.INDEPENDENT;
        int scale = large ? 2 : 1;
        int processors = asks(0.06) ? between(1, 2) : 0;
        int cores = asks(0.2) ? between(2, 10) : 0;
        double memory = asks(0.35) ? pick(8, 12, 16, 24, 32, 48) * scale : 0;
        double bandwidth = asks(0.3) ? bandwidth() : 0;
        ProcessorNeeds processing = new ProcessorNeeds(processors, cores, asks(0.15) ? between(4, 25) : 0,
                asks(0.08) ? between(14, 24) / 10.0 : 0, asks(0.08) ? between(16, 27) / 10.0 : 0);
        return new Requirements(processing, new MemoryNeeds(memory, bandwidth, asks(0.12) ? pick(1.0, 2.0, 4.0, 8.0 / 3) : 0,
                asks(0.12) ? pick(1.0, 1.6, 2.133, 4.266) : 0, asks(0.12) ? between(1, large ? 8 : 3) : 0, mode));
    }

    /** The worth of a number of channels at a usual speed, or a share of it that an uneven population gives. */
    private double bandwidth() {
        double channel = pick(1866, 2133, 2400) * 8 / 1000.0;
        int most = large ? 5 : 2;
        return pick(channel * between(1, most), channel * between(1, most) * pick(1.0, 1.5, 4.0 / 3), (double) between(5, 30 * most));
    }

    private Limits limits(int machines, Objective objective) {
        double often = objective == Objective.CHEAPEST || objective == Objective.BEST_VALUE ? 0.15 : 0.6;
        return new Limits(
                asks(often) ? OptionalLong.of((long) machines * between(20, 70) * 1000) : OptionalLong.empty(),
                asks(0.15) ? OptionalDouble.of(between(40, 100) * 5) : OptionalDouble.empty(),
                asks(0.15) ? OptionalInt.of(pick(0, 2, 2, 4)) : OptionalInt.empty(),
                asks(0.35) ? OptionalDouble.of(between(22, 32)) : OptionalDouble.empty(),
                chance(0.7) ? 0 : between(0, 20) * 100,
                chance(0.5) ? OptionalDouble.empty() : OptionalDouble.of(pick(115, 230, 230, 230)),
                !asks(0.2) ? Set.of() : pick(Set.of(Condition.NEW, Condition.USED), Set.of(Condition.REFURBISHED, Condition.USED), Set.of(Condition.NEW, Condition.REFURBISHED)));
    }

    private Set<String> some(double share) {
        Set<String> some = new HashSet<>();
        if (chance(share)) {
            int count = between(1, 2);
            for (int i = 0; i < count; i++) {
                some.add(skus.get(random.nextInt(skus.size())));
            }
        }
        return some;
    }

    private Map<String, Integer> onHand() {
        Map<String, Integer> own = new HashMap<>();
        if (chance(0.25)) {
            List<String> from = new ArrayList<>(skus);
            int count = between(1, 3);
            for (int i = 0; i < count; i++) {
                own.put(from.get(random.nextInt(from.size())), between(1, 4));
            }
        }
        return own;
    }

    /** A chance that lenient requests take less often. */
    private boolean asks(double share) {
        return chance(share * rigour);
    }

    private boolean chance(double share) {
        return random.nextDouble() < share;
    }

    private int between(int least, int most) {
        return random.nextInt(least, most + 1);
    }

    @SafeVarargs
    private <T> T pick(T... choices) {
        return choices[random.nextInt(choices.length)];
    }
}
