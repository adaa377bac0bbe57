package sledwright.web.api;

import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import sledwright.book.BookRefusal;
import sledwright.input.Fault;
import sledwright.input.FaultsException;
import sledwright.web.http.RefusedException;

/** What the book answers or refuses, over HTTP. */
public final class BookReplies {

    private static final Map<BookRefusal.Kind, Integer> STATUSES = Map.of(BookRefusal.Kind.UNKNOWN, 404, BookRefusal.Kind.STEP, 409,
            BookRefusal.Kind.TAKEN, 409, BookRefusal.Kind.STALE, 409, BookRefusal.Kind.VALUE, 400);

    private BookReplies() {
    }

    /** @throws RefusedException when the book refuses, or cannot be read */
    public static <A> A of(Supplier<A> answer) {
        try {
            return answer.get();
        } catch (BookRefusal refused) {
            throw RefusedException.of(STATUSES.get(refused.kind()), "the book", "", refused.getMessage());
        } catch (FaultsException unreadable) {
            throw RefusedException.of(503, "the book", "", "cannot be used now: "
                    + unreadable.faults().stream().map(Fault::toString).collect(Collectors.joining("; ")));
        }
    }
}
