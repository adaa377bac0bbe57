package sledwright.web.queue;

/** So many questions wait already that one more is not taken. */
public final class BusyException extends RuntimeException {

    BusyException() {
        super("too many questions wait", null, false, false);
    }
}
