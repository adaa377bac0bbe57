package sledwright.domain;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How high a card is, or a slot allows a card to be. */
public enum CardHeight {
    LOW, FULL;

    /** The word that files use. */
    public String label() {
        return name().toLowerCase(Locale.ROOT);
    }

    public static Optional<CardHeight> named(String label) {
        return Arrays.stream(values()).filter(height -> height.label().equals(label)).findFirst();
    }
}
