package sledwright.domain;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;

/** The state in which a lot is sold. */
public enum Condition {
    NEW, REFURBISHED, USED;

    private final String label = name().toLowerCase(Locale.ROOT);

    /** The word that catalogues use for this condition. */
    public String label() {
        return label;
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
