package sledwright.web;

import java.io.IOException;
import java.net.URI;
import java.util.Set;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import sledwright.input.FaultsException;
import sledwright.web.api.ApiHandler;
import sledwright.web.http.AccessLine;
import sledwright.web.http.ErrorAnswers;
import sledwright.web.http.Guard;
import sledwright.web.http.Patience;
import sledwright.web.page.PageHandler;
import sledwright.web.shop.LiveCatalog;
import sledwright.web.queue.Reception;
import sledwright.web.queue.SearchQueue;

/** The server: a catalogue, a queue of questions, and what answers them over HTTP. */
public final class WebServer implements AutoCloseable {

    /** Addresses that only this machine reaches. */
    public static final Set<String> LOOPBACK = Set.of("127.0.0.1", "localhost", "::1", "[::1]");

    private static final int THREADS = 12;
    private static final long IDLE_MILLIS = 60_000;
    private static final long LOOKS_EVERY_S = 1;
    private static final long ENDS_WITHIN_MILLIS = 3_000;

    private final WebSettings settings;
    private final Server server;
    private final ServerConnector connector;
    private final SearchQueue queue;
    private final ScheduledExecutorService watch = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "watch");
        thread.setDaemon(true);
        return thread;
    });

    private WebServer(WebSettings settings) {
        this.settings = settings;
        WebSettings.Bounds bounds = settings.bounds();
        LiveCatalog shop = new LiveCatalog(settings.catalog(), new WarmUp());
        queue = new SearchQueue(bounds.searches(), bounds.waiting());
        Reception reception = new Reception(queue, bounds.bodyBytes(), bounds.patience(), settings.defects());
        Patience patience = new Patience(bounds.patience(), bounds.connections(),
                new Guard(LOOPBACK, new Handler.Sequence(new PageHandler(shop, reception),
                new ApiHandler(shop::state, reception))));
        QueuedThreadPool threads = new QueuedThreadPool(THREADS);
        threads.setName("http");
        threads.setDaemon(true);
        server = new Server(threads);
        connector = new ServerConnector(server, 1, 1, new HttpConnectionFactory(http(bounds)));
        connector.setHost(settings.host());
        connector.setPort(settings.port());
        connector.setIdleTimeout(IDLE_MILLIS);
        connector.addBean(patience);
        server.addConnector(connector);
        server.setHandler(patience);
        server.setErrorHandler(new ErrorAnswers());
        server.setRequestLog(new AccessLine(settings.log()));
        server.setStopTimeout(ENDS_WITHIN_MILLIS);
        watch.scheduleWithFixedDelay(() -> watched(patience, shop), LOOKS_EVERY_S, LOOKS_EVERY_S, TimeUnit.SECONDS);
    }

    private void watched(Patience patience, LiveCatalog shop) {
        try {
            patience.sweep();
            shop.look();
        } catch (RuntimeException | Error defect) {
            settings.defects().accept(defect);
        }
    }

    private static HttpConfiguration http(WebSettings.Bounds bounds) {
        HttpConfiguration http = new HttpConfiguration();
        http.setSendServerVersion(false);
        http.setSendXPoweredBy(false);
        http.setRequestHeaderSize(bounds.headerBytes());
        return http;
    }

    /**
     * Starts to answer.
     *
     * @throws FaultsException when the catalogue has faults
     * @throws IOException     when nothing can listen at that address
     */
    public static WebServer start(WebSettings settings) throws IOException {
        WebServer web = new WebServer(settings);
        try {
            web.server.start();
            return web;
        } catch (IOException taken) {
            web.close();
            throw taken;
        } catch (Exception defect) {
            web.close();
            throw new IllegalStateException(defect);
        }
    }

    /** Where it answers. */
    public URI address() {
        String host = settings.host().contains(":") && !settings.host().startsWith("[") ? "[" + settings.host() + "]" : settings.host();
        return URI.create("http://%s:%s/".formatted(host, connector.getLocalPort()));
    }

    /** Ends it: nothing new is taken in, and what is being answered has a few seconds. */
    @Override
    public void close() {
        watch.shutdownNow();
        try {
            server.stop();
        } catch (Exception stuck) {
            settings.defects().accept(stuck);
        }
        queue.close();
    }
}
