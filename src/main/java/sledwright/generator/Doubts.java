package sledwright.generator;

import java.util.Collection;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What keeps an answer from being proved.
 *
 * @param causes   none: it is
 * @param tooLarge skus of platforms that take more populations than are listed
 */
public record Doubts(Set<Cause> causes, SortedSet<String> tooLarge) {

    public static final Doubts NONE = new Doubts(Set.of(), new TreeSet<>());

    /** What there can be. */
    public enum Cause {
        /** The deadline came first; all others would be there without one, too. */
        TIME,
        /** A platform takes more populations than are listed. */
        SIZE,
        /** Alike modules of unequal watts or ranks could be shared out in ways that were not tried. */
        SHARING,
        /** More load may take less from the wall, so that what was dropped as heavier may cost less to run. */
        EFFICIENCY;

        /** The word of results. */
        public String label() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public Doubts {
        causes = causes.isEmpty() ? Set.of() : Set.copyOf(causes);
        tooLarge = new TreeSet<>(tooLarge);
    }

    public static Doubts of(Cause cause) {
        return new Doubts(Set.of(cause), new TreeSet<>());
    }

    public static Doubts ofAll(Collection<Doubts> some) {
        Set<Cause> causes = EnumSet.noneOf(Cause.class);
        SortedSet<String> tooLarge = new TreeSet<>();
        some.forEach(doubts -> {
            causes.addAll(doubts.causes);
            tooLarge.addAll(doubts.tooLarge);
        });
        return new Doubts(causes, tooLarge);
    }

    /** What more time does not do away with. */
    public Doubts whateverTheTime() {
        return new Doubts(causes.stream().filter(cause -> cause != Cause.TIME).collect(Collectors.toSet()), tooLarge);
    }

    /** Whether the answer is proved. */
    public boolean none() {
        return causes.isEmpty();
    }

    /** Whether more time could do away with some of it. */
    public boolean late() {
        return causes.contains(Cause.TIME);
    }
}
