package sledwright.domain;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What makes one valid build better than another. */
public enum Objective {
    CHEAPEST, MOST_THROUGHPUT, MOST_BANDWIDTH, MOST_MEMORY, BEST_VALUE, MOST_WORK, MOST_CORES, LEAST_TOTAL;

    /** Whether it measures an amount of money, of which less is better; else a figure of one machine. */
    public boolean isMoney() {
        return this == CHEAPEST || this == BEST_VALUE || this == LEAST_TOTAL;
    }

    /** The word that requests use for this objective. */
    public String label() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The objective that a request calls {@code label}, whatever its case. */
    public static Optional<Objective> named(String label) {
        return Arrays.stream(values()).filter(objective -> objective.label().equalsIgnoreCase(label)).findFirst();
    }

    @Override
    public String toString() {
        return label();
    }
}
