package sledwright.book;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Where a quote stands. */
public enum QuoteState {
    /** Nobody but the shop has seen it. */
    DRAFT,
    SENT,
    ACCEPTED,
    DECLINED,
    /** It was sent, and the last day on which it holds is over; nothing has to be done for that. */
    EXPIRED,
    WITHDRAWN,
    /** Its parts have been taken from the shelf. */
    PICKED,
    DELIVERED;

    /** All of them as people write them. */
    public static List<String> labels() {
        return Arrays.stream(values()).map(QuoteState::label).toList();
    }

    /** The one that is written so, whatever the case. */
    public static Optional<QuoteState> named(String label) {
        return Arrays.stream(values()).filter(state -> state.label().equalsIgnoreCase(label)).findFirst();
    }

    public String label() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Whether it may still become an order. */
    public boolean isOpen() {
        return this == DRAFT || this == SENT;
    }
}
