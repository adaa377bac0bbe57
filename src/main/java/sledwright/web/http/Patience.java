package sledwright.web.http;

import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.Comparator;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.jetty.http.MetaData;
import org.eclipse.jetty.io.Connection;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.HttpStream;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/**
 * How long a connection may stay open without a whole request, however slowly its bytes come, or with an answer that is not taken, however
 * slowly it is read; and how many there may be: one more closes the one that has been waited for longest.
 */
public final class Patience extends Handler.Wrapper implements Connection.Listener {

    private static final long BUSY = Long.MAX_VALUE;

    /** Connection -> since when it has been waited for, {@link System#nanoTime}; BUSY: its request is being answered. */
    private final Map<Connection, Long> waiting = new ConcurrentHashMap<>();
    private final Duration longest;
    private final int most;

    public Patience(Duration longest, int most, Handler next) {
        super(next);
        this.longest = longest;
        this.most = most;
    }

    @Override
    public void onOpened(Connection connection) {
        waiting.put(connection, System.nanoTime());
        if (waiting.size() > most) {
            long now = System.nanoTime();
            waiting.entrySet().stream().filter(open -> open.getValue() != BUSY && open.getKey() != connection)
                    .max(Comparator.comparingLong(open -> now - open.getValue()))
                    .map(Map.Entry::getKey).ifPresentOrElse(Patience::end, () -> end(connection));
        }
    }

    @Override
    public void onClosed(Connection connection) {
        waiting.remove(connection);
    }

    /** Closes those that have been waited for too long; asked for again and again. */
    public void sweep() {
        long now = System.nanoTime();
        waiting.forEach((connection, since) -> {
            if (since != BUSY && now - since > longest.toNanos()) {
                end(connection);
            }
        });
    }

    private static void end(Connection connection) {
        connection.getEndPoint().close();
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        Connection connection = request.getConnectionMetaData().getConnection();
        waiting.computeIfPresent(connection, (open, since) -> BUSY);
        // From its last piece on an answer has as long to be taken as a request has to come.
        request.addHttpStreamWrapper(stream -> new HttpStream.Wrapper(stream) {
            @Override
            public void send(MetaData.Request asked, MetaData.Response answer, boolean last, ByteBuffer content, Callback sent) {
                if (last) {
                    waiting.computeIfPresent(connection, (open, since) -> System.nanoTime());
                }
                super.send(asked, answer, last, content, sent);
            }
        });
        Request.addCompletionListener(request, failed -> waiting.computeIfPresent(connection, (open, since) -> System.nanoTime()));
        return super.handle(request, response, callback);
    }
}
