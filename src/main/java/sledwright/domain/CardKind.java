package sledwright.domain;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What an expansion card is for. */
public enum CardKind {
    NETWORK, CONTROLLER, ACCELERATOR, OTHER;

    /** The word that files use. */
    public String label() {
        return name().toLowerCase(Locale.ROOT);
    }

    public static Optional<CardKind> named(String label) {
        return Arrays.stream(values()).filter(kind -> kind.label().equals(label)).findFirst();
    }
}
