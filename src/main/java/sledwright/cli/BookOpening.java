package sledwright.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.UnaryOperator;
import sledwright.book.Book;
import sledwright.book.QuoteNumber;
import sledwright.book.QuotedMachines;
import sledwright.book.Signature;
import sledwright.book.store.BookPlace;
import sledwright.desk.view.SheetAnswer;
import sledwright.domain.Catalog;
import sledwright.web.shop.BookShelf;

/** The book that a command line names. Apart from the options, so that a run without a book loads nothing of it. */
final class BookOpening {

    private BookOpening() {
    }

    /** The book that is named, or the one where it usually is; made where there is none. */
    static Book open(SharedOptions shared, Terminal terminal) {
        return shared.book().map(BookOpening::open).orElseGet(() -> Book.open(BookPlace.usual(terminal.environment()), Version.built()));
    }

    private static Book open(String place) {
        return Book.open(named(place), Version.built());
    }

    private static BookPlace named(String place) {
        return BookPlace.named(place).orElseThrow(() ->
                new UsageException("--book '%s' must be a file, or begin with jdbc:postgresql:".formatted(place)));
    }

    /** Where the book of a server stands; one that is there is opened, so that what is wrong with it is said at once. */
    static BookShelf shelf(String place, Terminal terminal) {
        BookShelf shelf = new BookShelf(place == null ? BookPlace.usual(terminal.environment()) : named(place), Version.built());
        shelf.ifThere();
        return shelf;
    }

    /** Whether the number of a quote is named in the place of a file. */
    static boolean isQuote(Path file) {
        return file != null && !Files.exists(file) && QuoteNumber.named(file.toString()).isPresent();
    }

    /** What the bench puts together of a quote. */
    static SheetAnswer sheet(String number, SharedOptions shared, Terminal terminal) {
        Signature reader = new Signature("", Instant.now(), shared.today().orElseGet(terminal.clock()));
        try (Book book = open(shared, terminal)) {
            return QuotedMachines.of(book, QuoteNumber.named(number).orElseThrow(), shared.catalog(), reader, shared.terms());
        }
    }

    /** What leaves of a catalogue what the book does not keep for somebody on a day. */
    static UnaryOperator<Catalog> stock(String place, LocalDate today) {
        try (Book book = open(place)) {
            return book.reserved(Optional.empty(), new Signature("", Instant.now(), today))::less;
        }
    }
}
