package sledwright.domain;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How a machine uses its memory: all of it, mirrored in pairs of channels, or with a rank of each channel held back. */
public enum MemoryMode {
    INDEPENDENT, MIRRORED, RANK_SPARING;

    /** The word that requests and platform files use for this mode. */
    public String label() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The mode that a file calls {@code label}, whatever its case. */
    public static Optional<MemoryMode> named(String label) {
        return Arrays.stream(values()).filter(mode -> mode.label().equalsIgnoreCase(label)).findFirst();
    }

    @Override
    public String toString() {
        return label();
    }
}
