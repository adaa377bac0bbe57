package sledwright.generator.fitout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import sledwright.domain.Housed;
import sledwright.domain.Platform;

/**
 * What makes machines complete whose other parts load so much: of all sets of drives, cards, extras and enclosures with which they are
 * valid, the one of the least price, then the least load.
 *
 * @param heavierThan the machine's other parts load more than this many microwatts
 * @param atMost      and at most this many
 * @param price       of drives, cards, extras and enclosures with labour, all machines, minor units
 * @param housed      empty where no enclosure is bought
 * @param rivals      what else completes such machines, where not the least price decides between them
 */
public record Completion(long heavierThan, long atMost, long price, Fitted fitted, Optional<Housed> housed, Optional<Rivals> rivals) {

    /**
     * All that completes machines of a kind, whatever it costs.
     *
     * @param mostMicro what a machine may load with any of it, microwatts
     */
    public static final class Rivals {

        private final List<Completion> all = new ArrayList<>();
        private final long mostMicro;

        private Rivals(long mostMicro) {
            this.mostMicro = mostMicro;
        }

        /** Those that a machine whose other parts load so much can have. */
        public Stream<Completion> of(long otherMicro) {
            return all.stream().filter(one -> one.heavierThan < otherMicro && otherMicro <= one.atMost
                    && otherMicro + one.fitted.microwatts() <= mostMicro);
        }
    }

    public Completion(long heavierThan, long atMost, long price, Fitted fitted, Optional<Housed> housed) {
        this(heavierThan, atMost, price, fitted, housed, Optional.empty());
    }

    /** No load is greater. */
    public static final long ANY_LOAD = Long.MAX_VALUE / 4;

    /** Stands for completions that there was no time to find: no other costs or loads less. */
    public static final Completion UNKNOWN = new Completion(-1, ANY_LOAD, 0, Fitted.NOTHING, Optional.empty());

    /** A machine that needs nothing more. */
    public static final Completion NOTHING = new Completion(-1, ANY_LOAD, 0, Fitted.NOTHING, Optional.empty());

    /** Whether it is known what completes the machine. */
    public boolean isKnown() {
        return this != UNKNOWN;
    }

    /**
     * The completions by the load of the other parts, the lightest first.
     *
     * @param sets      what may be fitted, see {@link Fittings#of}
     * @param mostMicro what a machine may load with all of it, microwatts; {@link #ANY_LOAD}: anything
     */
    public static List<Completion> of(Platform platform, List<Fitted> sets, Housings housings, long mostMicro) {
        boolean housed = housings.needs(platform);
        if (!housed && (mostMicro == ANY_LOAD || sets.size() == 1)) {
            return sets.isEmpty() ? List.of() : List.of(new Completion(-1, ANY_LOAD, sets.get(0).price(), sets.get(0), Optional.empty()));
        }
        Set<Long> totals = housed ? housings.edges(platform) : new TreeSet<>();
        if (mostMicro < ANY_LOAD) {
            totals.add(mostMicro);
        }
        Set<Long> edges = new TreeSet<>();
        for (Fitted set : sets) {
            totals.stream().filter(total -> total <= mostMicro).map(total -> total - set.microwatts()).filter(edge ->
                    edge >= 0).forEach(edges::add);
        }
        List<Completion> completions = new ArrayList<>();
        long from = -1;
        for (long edge : edges) {
            Completion best = best(platform, sets, housings, from, edge, mostMicro);
            if (best != null) {
                join(completions, best);
            }
            from = edge;
        }
        return completions;
    }

    /** The same of every set that may be the best at some load where not the price decides; each of them knows the others. */
    public static List<Completion> ofEach(Platform platform, List<Fitted> sets, Housings housings, long mostMicro) {
        if (sets.size() == 1) {
            return of(platform, sets, housings, mostMicro);
        }
        Rivals rivals = new Rivals(mostMicro);
        sets.forEach(set -> of(platform, List.of(set), housings, mostMicro).forEach(one -> rivals.all.add(new Completion(one.heavierThan,
                one.atMost, one.price, one.fitted, one.housed, Optional.of(rivals)))));
        return List.copyOf(rivals.all);
    }

    /** What is best up to a load; null where nothing is valid. */
    private static Completion best(Platform platform, List<Fitted> sets, Housings housings, long from, long edge, long mostMicro) {
        Completion best = null;
        for (Fitted set : sets) {
            if (edge + set.microwatts() > mostMicro) {
                continue;
            }
            Completion next = null;
            if (housings.needs(platform)) {
                Housings.Priced housed = housings.cheapest(platform, edge + set.microwatts()).orElse(null);
                next = housed == null ? null : new Completion(from, edge, set.price() + housed.price(), set, Optional.of(housed.housed()));
            } else {
                next = new Completion(from, edge, set.price(), set, Optional.empty());
            }
            if (next != null && (best == null || next.price < best.price || next.price == best.price
                    && set.microwatts() < best.fitted.microwatts())) {
                best = next;
            }
        }
        return best;
    }

    /** Adds a completion, or lengthens the last one where it goes on unchanged. */
    private static void join(List<Completion> completions, Completion next) {
        Completion last = completions.isEmpty() ? null : completions.get(completions.size() - 1);
        if (last != null && last.atMost == next.heavierThan && last.price == next.price && last.fitted == next.fitted
                && last.housed.equals(next.housed)) {
            completions.set(completions.size() - 1, new Completion(last.heavierThan, next.atMost, next.price, next.fitted, next.housed));
        } else {
            completions.add(next);
        }
    }
}
