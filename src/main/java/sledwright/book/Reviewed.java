package sledwright.book;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * An open quote against today's catalogue.
 *
 * @param now     the best found for its request today; empty where it cannot be met or was not looked for
 * @param least   what is proved that it costs at least, the same where that is the best; empty where nothing is known of it
 * @param soldOut what of the chosen option is not there any more, a lot a line
 */
public record Reviewed(SavedQuote quote, Outcome outcome, Optional<BigDecimal> now, Optional<BigDecimal> least, List<String> soldOut) {

    /** What has become of it. */
    public enum Outcome {
        /** It costs what it did. */
        SAME,
        DEARER,
        CHEAPER,
        /** Its request cannot be met any more, which is proved. */
        IMPOSSIBLE,
        /** Time was over before it was known whether its request costs more, or can be met at all. */
        UNDECIDED,
        /** Its parts are kept for it, so that nothing can have become of it. */
        HELD,
        /** Its request cannot be read with today's catalogue, as when it names a part that is gone. */
        UNREADABLE;

        public String label() {
            return name().toLowerCase(Locale.ROOT);
        }

        static Outcome named(String label) {
            return Arrays.stream(values()).filter(outcome -> outcome.label().equals(label)).findFirst().orElseThrow();
        }
    }

    public Reviewed {
        soldOut = List.copyOf(soldOut);
    }

    /** Whether something cheaper may yet be found. */
    public boolean isOpen() {
        return now.isPresent() && !now.equals(least);
    }
}
