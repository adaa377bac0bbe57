package sledwright.generator.time;

/** The deadline came first. */
public final class OutOfTimeException extends UnfinishedException {

    private static final long serialVersionUID = 1L;

    public OutOfTimeException() {
        super("out of time");
    }
}
