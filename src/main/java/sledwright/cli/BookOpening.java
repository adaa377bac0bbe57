package sledwright.cli;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.UnaryOperator;
import sledwright.book.Book;
import sledwright.book.QuoteNumber;
import sledwright.book.QuotedMachines;
import sledwright.book.SavedQuote;
import sledwright.book.Signature;
import sledwright.book.store.BookPlace;
import sledwright.desk.view.Audience;
import sledwright.desk.view.OrderAnswer;
import sledwright.desk.view.SheetAnswer;
import sledwright.domain.Catalog;
import sledwright.report.papers.OfferPapers;
import sledwright.web.shop.BookShelf;

/** The book that a command line names. Apart from the options, so that a run without a book loads nothing of it. */
final class BookOpening {

    /** What the book has of an order: its paper as it was kept or, where it is none yet, the answer. */
    record Ordered(Optional<byte[]> paper, Optional<OrderAnswer> answer) {
    }

    private BookOpening() {
    }

    /** The book that is named, or the one where it usually is; made where there is none. */
    static Book open(SharedOptions shared) {
        return Book.open(shared.book().map(BookOpening::named).orElseGet(() -> BookPlace.usual(shared.terminal().environment())),
                Version.built());
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

    /** What the bench puts together of a quote. */
    static SheetAnswer sheet(String number, SharedOptions shared) {
        try (Book book = open(shared)) {
            return QuotedMachines.of(book, QuoteNumber.named(number).orElseThrow(), shared.catalog(), reader(shared),
                    shared.terms());
        }
    }

    /** A paper of the last version of a quote for one request, every byte as it was kept. */
    static byte[] paper(String number, Audience audience, SharedOptions shared) {
        try (Book book = open(shared)) {
            SavedQuote quote = book.find(QuoteNumber.named(number).orElseThrow(), reader(shared));
            if (book.isOrder(quote)) {
                throw new UsageException("%s is an order.\nMaybe run 'sledwright order %s'.".formatted(number, number));
            }
            return paper(book, quote, audience, shared);
        }
    }

    private static byte[] paper(Book book, SavedQuote quote, Audience audience, SharedOptions shared) {
        return book.paper(quote, quote.offered().version(), OfferPapers.name(shared.format().toString(), audience));
    }

    /** An order of the book as it was kept; of a quote for one request what its machines take from which lot and supplier. */
    static Ordered order(String number, Audience audience, SharedOptions shared) {
        try (Book book = open(shared)) {
            SavedQuote quote = book.find(QuoteNumber.named(number).orElseThrow(), reader(shared));
            if (book.isOrder(quote)) {
                return new Ordered(Optional.of(paper(book, quote, audience, shared)), Optional.empty());
            }
            if (audience == Audience.CUSTOMER) {
                throw new UsageException("%s is a quote for one request.\nMaybe run 'sledwright quote %s', or add --for shop."
                        .formatted(number, number));
            }
            return new Ordered(Optional.empty(), Optional.of(QuotedMachines.order(book, quote.number(), shared.catalog(),
                    reader(shared), shared.terms())));
        }
    }

    private static Signature reader(SharedOptions shared) {
        return new Signature("", Instant.now(), shared.day());
    }

    /** What leaves of a catalogue what the book does not keep for somebody on a day. */
    static UnaryOperator<Catalog> stock(String place, LocalDate today) {
        try (Book book = Book.open(named(place), Version.built())) {
            return book.reserved(Optional.empty(), new Signature("", Instant.now(), today))::less;
        }
    }
}
