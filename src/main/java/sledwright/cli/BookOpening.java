package sledwright.cli;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.UnaryOperator;
import sledwright.book.Book;
import sledwright.book.Signature;
import sledwright.book.store.BookPlace;
import sledwright.domain.Catalog;

/** The book that a command line names. Apart from the options, so that a run without a book loads nothing of it. */
final class BookOpening {

    private BookOpening() {
    }

    /**
     * The book, made where there is none.
     *
     * @param place as the user names it; null: where it usually is
     */
    static Book open(String place, Terminal terminal) {
        BookPlace where = place == null ? BookPlace.usual(terminal.environment()) : BookPlace.named(place).orElseThrow(() ->
                new UsageException("--book '%s' must be a file, or begin with jdbc:postgresql:".formatted(place)));
        return Book.open(where, Version.built());
    }

    /** What leaves of a catalogue what the book does not keep for somebody on a day. */
    static UnaryOperator<Catalog> stock(String place, LocalDate today, Terminal terminal) {
        try (Book book = open(place, terminal)) {
            return book.reserved(Optional.empty(), new Signature("", Instant.now(), today))::less;
        }
    }
}
