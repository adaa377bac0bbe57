package sledwright.explain.ask;

/** Time ran out before a question could be answered. */
public final class UnsettledException extends RuntimeException {

    private static final long serialVersionUID = 1;

    public UnsettledException() {
        super("time ran out", null, false, false);
    }
}
