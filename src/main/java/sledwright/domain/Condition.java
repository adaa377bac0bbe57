package sledwright.domain;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** The state in which a lot is sold. */
public enum Condition {
    NEW, REFURBISHED, USED;

    private static final List<Condition> ALL = List.of(values());

    private final String label = name().toLowerCase(Locale.ROOT);

    /** The word that catalogues use for this condition. */
    public String label() {
        return label;
    }

    /** The condition that a catalogue calls {@code label}, whatever its case. */
    public static Optional<Condition> named(String label) {
        for (Condition condition : ALL) {
            if (condition.label.equalsIgnoreCase(label)) {
                return Optional.of(condition);
            }
        }
        return Optional.empty();
    }

    /** All of some conditions and some more; the first are not empty. */
    public static Set<Condition> together(Set<Condition> some, Set<Condition> more) {
        Set<Condition> all = EnumSet.copyOf(some);
        all.addAll(more);
        return all;
    }

    @Override
    public String toString() {
        return label();
    }
}
