package sledwright.book;

import java.time.LocalDate;
import java.util.Optional;

/**
 * Which quotes are looked for; what is empty rules none out.
 *
 * @param customer part of the name, whatever the case
 * @param words    each of them stands somewhere in the quote: its names, note or parts
 * @param part     a part number of the chosen option, whatever the case
 * @param since    the first day on which it may have been made
 * @param until    the last
 */
public record BookSearch(Optional<String> customer, Optional<QuoteState> state, Optional<String> words, Optional<String> part,
                         Optional<LocalDate> since, Optional<LocalDate> until) {

    /** @throws BookRefusal where no day is between the two */
    public BookSearch {
        if (since.isPresent() && until.isPresent() && since.get().isAfter(until.get())) {
            throw new BookRefusal(BookRefusal.Kind.VALUE, "no day is from %s until %s; the later day comes last"
                    .formatted(since.get(), until.get()));
        }
    }

    /** All quotes. */
    public static BookSearch everything() {
        return new BookSearch(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** Quotes that stand there. */
    public static BookSearch of(QuoteState state) {
        return new BookSearch(Optional.empty(), Optional.of(state), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
    }
}
