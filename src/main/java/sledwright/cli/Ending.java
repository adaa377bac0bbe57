package sledwright.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import sun.misc.Signal;
import sun.misc.SignalHandler;

/** What asks a program to end that would otherwise go on for ever: Ctrl-C, or the system. */
final class Ending implements AutoCloseable {

    private final CountDownLatch asked = new CountDownLatch(1);
    private final Map<Signal, SignalHandler> before = new LinkedHashMap<>();

    private Ending() {
        for (String name : List.of("INT", "TERM")) {
            try {
                Signal signal = new Signal(name);
                before.put(signal, Signal.handle(signal, heard -> asked.countDown()));
            } catch (IllegalArgumentException taken) {
                // Java was started so that it leaves signals alone: then it ends the program at once, as it would without us.
            }
        }
    }

    /** Listens until closed. */
    static Ending listen() {
        return new Ending();
    }

    /** Waits until somebody asks for the end. */
    void await() {
        try {
            asked.await();
        } catch (InterruptedException hurried) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        before.forEach(Signal::handle);
    }
}
