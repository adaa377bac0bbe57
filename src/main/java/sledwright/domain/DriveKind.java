package sledwright.domain;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How a drive keeps its data. */
public enum DriveKind {
    HDD, SSD;

    /** The word that files use. */
    public String label() {
        return name().toLowerCase(Locale.ROOT);
    }

    public static Optional<DriveKind> named(String label) {
        return Arrays.stream(values()).filter(kind -> kind.label().equals(label)).findFirst();
    }
}
