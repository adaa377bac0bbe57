package sledwright.explain;

/** Time ran out before a question could be answered. */
final class UnsettledException extends RuntimeException {

    private static final long serialVersionUID = 1;

    UnsettledException() {
        super("time ran out", null, false, false);
    }
}
