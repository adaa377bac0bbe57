package sledwright.book;

import java.util.List;
import sledwright.book.store.BookPlace;

/** A process of its own that works on a review which others share, and says which quotes it took; one that is slow never finishes. */
final class SharingReviewer {

    static final String RUN = "run";

    private SharingReviewer() {
    }

    /** @param arguments the book, the moment of the review, and whether it is slow */
    public static void main(String[] arguments) throws InterruptedException {
        try (Book book = Book.open(BookPlace.named(arguments[0]).orElseThrow(), "0.1")) {
            long now = Long.parseLong(arguments[1]);
            for (List<QuoteNumber> taken = take(book, now); !taken.isEmpty(); taken = take(book, now)) {
                taken.forEach(System.out::println);
                if (Boolean.parseBoolean(arguments[2])) {
                    Thread.sleep(Long.MAX_VALUE);
                }
            }
        }
    }

    private static List<QuoteNumber> take(Book book, long now) {
        return book.rows(sql -> ReviewRows.take(sql, RUN, 4, now));
    }
}
