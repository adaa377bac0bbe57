package sledwright.generator.time;

/** There is more to list than is listed, however much time there were. */
public final class TooLargeException extends UnfinishedException {

    private static final long serialVersionUID = 1L;

    public TooLargeException() {
        super("too large");
    }
}
