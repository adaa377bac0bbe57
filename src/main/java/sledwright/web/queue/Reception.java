package sledwright.web.queue;

import java.time.Duration;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.Promise;
import sledwright.web.http.RefusedException;
import sledwright.web.http.Responses;

/** Takes in what is sent, without a thread that waits for it, and has it worked on in its turn. */
public final class Reception {

    /** The name of a line of questions, of which only the newest is worth an answer: a page sends one of its own. */
    public static final String LINE = "Sledwright-Line";
    private static final int LONGEST_NAME = 64;
    private static final String AGAIN_AFTER_S = "2";

    private final SearchQueue queue;
    private final int mostBytes;
    private final Duration patience;
    private final Departures departures;
    private final Consumer<Throwable> defects;
    private final Map<String, Visit> newest = new ConcurrentHashMap<>();

    /**
     * @param mostBytes  of a body
     * @param patience   for a body to come in full
     * @param departures notices who goes away
     * @param defects    receives what the program does wrong
     */
    public Reception(SearchQueue queue, int mostBytes, Duration patience, Departures departures, Consumer<Throwable> defects) {
        this.queue = queue;
        this.mostBytes = mostBytes;
        this.patience = patience;
        this.departures = departures;
        this.defects = defects;
    }

    /** Answers somebody of the shop. */
    public void serve(Request request, Response response, Callback callback, boolean takesLong, BiConsumer<byte[], Visit> work) {
        serve(request, response, callback, takesLong ? Turn.LONG : Turn.SOON, work);
    }

    /** @param work answers a body, from a thread that may take its time; what it throws is answered here */
    public void serve(Request request, Response response, Callback callback, Turn turn, BiConsumer<byte[], Visit> work) {
        requireLength(request);
        requirePlain(request);
        Visit visit = visit(request);
        // The connection may rest while the answer is worked on.
        request.addIdleTimeoutListener(tooLong -> false);
        request.addFailureListener(gone -> visit.end());
        CompletableFuture<byte[]> body = new CompletableFuture<>();
        Content.Source.asByteArrayAsync(request, mostBytes, Promise.Invocable.toPromise(body));
        body.orTimeout(patience.toMillis(), TimeUnit.MILLISECONDS).whenComplete((bytes, failed) -> {
            Consumer<RefusedException> refuse = refused -> visit.finish(() -> Responses.refusal(refused, request, response, callback));
            if (failed != null) {
                refuse.accept(unread(failed));
                return;
            }
            departures.watch(request, visit);
            try {
                queue.submit(turn, () -> work(bytes, visit, work, refuse));
            } catch (BusyException full) {
                refuse.accept(RefusedException.of(503, "the request", "",
                        "has to wait: too many questions are being answered; ask again soon").with("Retry-After", AGAIN_AFTER_S));
            }
        });
    }

    private void requireLength(Request request) {
        if (request.getLength() > mostBytes) {
            throw tooLarge();
        }
    }

    private static void requirePlain(Request request) {
        String coding = request.getHeaders().get(HttpHeader.CONTENT_ENCODING);
        if (coding != null && !coding.equalsIgnoreCase("identity")) {
            throw RefusedException.of(415, "Content-Encoding", coding, "is not read here; send the body as it is");
        }
    }

    private RefusedException tooLarge() {
        return RefusedException.of(413, "the body", "", "is larger than %s bytes".formatted(mostBytes));
    }

    private RefusedException unread(Throwable failed) {
        Throwable cause = failed instanceof CompletionException && failed.getCause() != null ? failed.getCause() : failed;
        if (cause instanceof TimeoutException) {
            return RefusedException.of(408, "the body", "", "did not come in full within %s s".formatted(patience.toSeconds()));
        }
        return cause instanceof IllegalStateException ? tooLarge()
                : RefusedException.of(400, "the body", "", "did not come in full");
    }

    private void work(byte[] body, Visit visit, BiConsumer<byte[], Visit> work, Consumer<RefusedException> refuse) {
        try {
            if (visit.isOver()) {
                throw RefusedException.of(409, "the request", "", "was overtaken by a newer one");
            }
            work.accept(body, visit);
        } catch (RefusedException refused) {
            refuse.accept(refused);
        } catch (RuntimeException | Error defect) {
            defects.accept(defect);
            refuse.accept(RefusedException.of(500, "the request", "", "could not be answered: this is a defect of the program"));
        }
    }

    /** A visit that ends the one before it in its line. */
    private Visit visit(Request request) {
        Visit visit = new Visit();
        String line = request.getHeaders().get(LINE);
        if (line != null && line.length() <= LONGEST_NAME) {
            Visit before = newest.put(line, visit);
            if (before != null) {
                before.end();
            }
            Request.addCompletionListener(request, done -> newest.remove(line, visit));
        }
        return visit;
    }
}
