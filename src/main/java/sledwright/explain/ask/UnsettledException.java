package sledwright.explain.ask;

import sledwright.generator.Doubts;

/** A question could not be answered: time ran out, or there is more to list than is listed. */
public final class UnsettledException extends RuntimeException {

    private static final long serialVersionUID = 1;

    private final transient Doubts doubts;

    /** Time ran out. */
    public UnsettledException() {
        this(Doubts.of(Doubts.Cause.TIME));
    }

    public UnsettledException(Doubts doubts) {
        super("unsettled", null, false, false);
        this.doubts = doubts;
    }

    /** What left it open. */
    public Doubts doubts() {
        return doubts;
    }
}
