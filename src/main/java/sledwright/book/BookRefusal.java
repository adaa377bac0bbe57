package sledwright.book;

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
        TAKEN
    }

    private final Kind kind;

    public BookRefusal(Kind kind, String message) {
        super(message);
        this.kind = kind;
    }

    public Kind kind() {
        return kind;
    }
}
