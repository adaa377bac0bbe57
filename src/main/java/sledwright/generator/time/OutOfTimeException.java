package sledwright.generator.time;

/** The deadline, or the memory, ended a computation before it was whole. */
public final class OutOfTimeException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    public OutOfTimeException() {
        super("out of time", null, false, false);
    }
}
