package sledwright.book;

import java.time.Instant;
import java.time.LocalDate;
import java.util.OptionalInt;

/**
 * Who writes into the book, and when.
 *
 * @param who   as the shop calls its people
 * @param at    the moment
 * @param today the day that counts, in the shop's own time
 * @param seen  the version of the quote that was looked at; empty: whatever is the last when it is written
 */
public record Signature(String who, Instant at, LocalDate today, OptionalInt seen) {

    public Signature(String who, Instant at, LocalDate today) {
        this(who, at, today, OptionalInt.empty());
    }

    public Signature withSeen(int version) {
        return new Signature(who, at, today, OptionalInt.of(version));
    }

    /** The quote, where it is still as it was seen. */
    SavedQuote seen(SavedQuote quote) {
        seen.ifPresent(quote::requireNoneAfter);
        return quote;
    }
}
