package sledwright.generator;

/** The deadline, or the memory, ended a computation before it was whole. */
final class OutOfTimeException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    OutOfTimeException() {
        super("out of time", null, false, false);
    }
}
