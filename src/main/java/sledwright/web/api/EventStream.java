package sledwright.web.api;

import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.stream.Collectors;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import sledwright.desk.Progress;
import sledwright.report.text.Json;
import sledwright.words.Numbers;

/**
 * An answer that is sent as it comes, as server-sent events (WHATWG HTML, section 9.2): {@code progress}, and one {@code answer}. Whoever
 * works on it never waits for whoever reads: while an event is still on its way, further progress is not sent.
 */
public final class EventStream {

    public static final String TYPE = "text/event-stream";

    private static final long BETWEEN_NANOS = Duration.ofMillis(100).toNanos();

    private final Response response;
    private final Callback callback;
    private final Runnable gone;
    private boolean writing;
    private String last;
    private long nextAt = System.nanoTime();

    /** @param gone is run when nobody reads any more */
    public EventStream(Response response, Callback callback, Runnable gone) {
        this.response = response;
        this.callback = callback;
        this.gone = gone;
    }

    public synchronized void progress(Progress now) {
        if (writing || last != null || System.nanoTime() < nextAt) {
            return;
        }
        nextAt = System.nanoTime() + BETWEEN_NANOS;
        writing = true;
        write(false, event("progress", json(now)), Callback.from(this::written, failed -> gone.run()));
    }

    /** Sends the answer when what is on its way has arrived. */
    public synchronized void answer(String json) {
        last = event("answer", json);
        if (!writing) {
            write(true, last, callback);
        }
    }

    private synchronized void written() {
        writing = false;
        if (last != null) {
            write(true, last, callback);
        }
    }

    private void write(boolean end, String event, Callback then) {
        if (!response.isCommitted()) {
            response.setStatus(200);
            response.getHeaders().put(HttpHeader.CONTENT_TYPE, TYPE);
        }
        response.write(end, ByteBuffer.wrap(event.getBytes(StandardCharsets.UTF_8)), then);
    }

    private static String event(String name, String data) {
        return "event: " + name + "\n" + data.lines().map(line -> "data: " + line + "\n").collect(Collectors.joining()) + "\n";
    }

    /** What is being done. */
    private record Doing(String doing) {
    }

    /** What was found so far; null where nothing was. */
    private record Found(BigDecimal price, BigDecimal bound, BigDecimal gap, BigDecimal seconds, int missing) {
    }

    private static String json(Progress now) {
        if (now instanceof Progress.Doing doing) {
            return Json.of(new Doing(doing.words()));
        }
        Progress.Found found = (Progress.Found) now;
        return Json.of(new Found(found.best().orElse(null), found.bound().orElse(null), found.gap().map(Numbers::decimal).orElse(null),
                Numbers.decimal(found.seconds()), found.missing()));
    }
}
