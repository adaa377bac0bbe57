package sledwright.domain;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Who brings the enclosure of a sled: it is bought, or the customer has one. */
public enum EnclosureFrom {
    NEW, OWN;

    /** The word that files use. */
    public String label() {
        return name().toLowerCase(Locale.ROOT);
    }

    public static Optional<EnclosureFrom> named(String label) {
        return Arrays.stream(values()).filter(from -> from.label().equals(label)).findFirst();
    }
}
