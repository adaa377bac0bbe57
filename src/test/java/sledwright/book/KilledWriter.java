package sledwright.book;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.book.store.BookPlace;
import sledwright.domain.Catalog;

/** A process of its own that writes into a book until it is killed, and says what it was informed of as done. */
final class KilledWriter {

    private static final int WRITERS = 3;

    private KilledWriter() {
    }

    public static void main(String[] arguments) {
        Book book = Book.open(BookPlace.of(Path.of(arguments[0])), "0.1");
        Catalog shop = Shelf.lots(Map.of("L1", 1_000_000_000));
        for (int writer = 0; writer < WRITERS; writer++) {
            new Thread(() -> write(book, shop)).start();
        }
    }

    private static void write(Book book, Catalog shop) {
        while (true) {
            QuoteNumber number = book.save(Shelf.version(List.of(Map.of("L1", 2), Map.of("L1", 1)), Shelf.DAY.plusDays(9)), "Nordmole", "",
                    Shelf.ANNA).number();
            say("saved " + number);
            book.step(number, QuoteStep.SEND, Optional.empty(), true, Optional.of(shop), "", Shelf.ANNA);
            say("held " + number);
        }
    }

    /** A line in one piece. */
    private static synchronized void say(String line) {
        System.out.println(line);
    }
}
