package sledwright.domain;

import java.util.Arrays;
import java.util.Optional;

/** The kinds of memory module that no machine mixes. */
public enum ModuleType {
    RDIMM("RDIMM"), LRDIMM("LRDIMM"), UDIMM("UDIMM"), THREE_DS("3DS");

    private final String label;

    ModuleType(String label) {
        this.label = label;
    }

    /** The word that catalogues use for this type. */
    public String label() {
        return label;
    }

    /** The type that a catalogue calls {@code label}, whatever its case. */
    public static Optional<ModuleType> named(String label) {
        return Arrays.stream(values()).filter(type -> type.label.equalsIgnoreCase(label)).findFirst();
    }

    @Override
    public String toString() {
        return label;
    }
}
