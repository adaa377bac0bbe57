package sledwright.web.shop;

import java.nio.file.Files;
import java.util.Optional;
import sledwright.book.Book;
import sledwright.book.store.BookPlace;

/** Where the book of quotes stands. A book that is a file is made by the first quote that is kept, and not before. */
public final class BookShelf implements AutoCloseable {

    private final BookPlace place;
    private final String program;
    private Book open;

    /** @param program the version of this program, which each quote keeps */
    public BookShelf(BookPlace place, String program) {
        this.place = place;
        this.program = program;
    }

    /** The book where there is one already. */
    public synchronized Optional<Book> ifThere() {
        boolean there = open != null || place.file().map(Files::exists).orElse(true);
        return there ? Optional.of(book()) : Optional.empty();
    }

    /** The book, made where there is none. */
    public synchronized Book book() {
        if (open == null) {
            open = Book.open(place, program);
        }
        return open;
    }

    @Override
    public synchronized void close() {
        if (open != null) {
            open.close();
        }
    }
}
