package sledwright.generator.time;

/** A computation ended before it was whole. */
public abstract class UnfinishedException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    UnfinishedException(String words) {
        super(words, null, false, false);
    }
}
