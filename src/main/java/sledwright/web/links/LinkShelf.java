package sledwright.web.links;

import java.util.Optional;
import java.util.function.Supplier;
import sledwright.book.Book;
import sledwright.book.CustomerLinks;

/**
 * Where links are kept.
 *
 * @param there the book, where there is one already
 * @param made  the book, made where there is none
 */
public record LinkShelf(Supplier<Optional<Book>> there, Supplier<Book> made) {

    Optional<CustomerLinks> ifThere() {
        return there.get().map(Book::links);
    }

    CustomerLinks links() {
        return made.get().links();
    }
}
