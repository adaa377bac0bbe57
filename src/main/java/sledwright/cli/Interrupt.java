package sledwright.cli;

import java.io.PrintWriter;
import java.util.concurrent.atomic.AtomicBoolean;
import sun.misc.Signal;
import sun.misc.SignalHandler;

/** Ctrl-C while a search runs: the first asks for what there is, the second ends the program at once. */
final class Interrupt implements AutoCloseable {

    /** What a shell reports of a program that an interrupt ended: 128 and the signal's number, 2. */
    private static final int INTERRUPTED = 130;

    private final AtomicBoolean asked = new AtomicBoolean();
    private final SignalHandler before;

    private Interrupt(PrintWriter err) {
        SignalHandler old = SignalHandler.SIG_DFL;
        try {
            old = Signal.handle(new Signal("INT"), signal -> {
                if (!asked.compareAndSet(false, true)) {
                    Runtime.getRuntime().halt(INTERRUPTED);
                }
                err.println("sledwright: stopping with the best found; press Ctrl-C again to end at once");
            });
        } catch (IllegalArgumentException taken) {
            // Java was started so that it leaves signals alone: then an interrupt ends the program, as it would without us.
        }
        before = old;
    }

    /** Listens until closed. */
    static Interrupt listen(PrintWriter err) {
        return new Interrupt(err);
    }

    /** Whether somebody pressed it. */
    boolean isAsked() {
        return asked.get();
    }

    @Override
    public void close() {
        try {
            Signal.handle(new Signal("INT"), before);
        } catch (IllegalArgumentException taken) {
            // Nothing was changed, either.
        }
    }
}
