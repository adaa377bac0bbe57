package sledwright.book;

import java.util.List;
import java.util.stream.Collectors;

/** What the book does not do; the message says why and what would be right. */
public final class BookRefusal extends RuntimeException {

    /** Why. */
    public enum Kind {
        /** There is no such quote. */
        UNKNOWN,
        /** A quote that stands there does not take that step. */
        STEP,
        /** Something that was said beside it is not so. */
        VALUE,
        /** Someone was first: what it takes is not there any more. */
        TAKEN,
        /** Its prices are older than the shop offers them. */
        STALE
    }

    private final Kind kind;
    private final List<Gone> gone;

    public BookRefusal(Kind kind, String message) {
        this(kind, message, List.of());
    }

    private BookRefusal(Kind kind, String message, List<Gone> gone) {
        super(message);
        this.kind = kind;
        this.gone = List.copyOf(gone);
    }

    /** Someone was first. */
    static BookRefusal taken(QuoteNumber number, List<Gone> gone) {
        return new BookRefusal(Kind.TAKEN, "%s takes what is not there any more.\n%s".formatted(number,
                gone.stream().map(Gone::toString).collect(Collectors.joining("\n"))), gone);
    }

    /** The same, knowing more. */
    BookRefusal and(String more) {
        return new BookRefusal(kind, getMessage() + "\n" + more, gone);
    }

    /** Lots that have not enough; empty where that is not why. */
    public List<Gone> gone() {
        return gone;
    }

    public Kind kind() {
        return kind;
    }
}
