package sledwright.domain;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** The state in which a lot is sold. */
public enum Condition {
    NEW, REFURBISHED, USED;

    /** The word that catalogues use for this condition. */
    public String label() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The condition that a catalogue calls {@code label}, whatever its case. */
    public static Optional<Condition> named(String label) {
        return Arrays.stream(values()).filter(condition -> condition.label().equalsIgnoreCase(label)).findFirst();
    }

    @Override
    public String toString() {
        return label();
    }
}
