package sledwright.web;

import java.io.IOException;
import java.net.URI;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import sledwright.input.FaultsException;
import sledwright.web.api.ApiHandler;
import sledwright.web.api.BookHandler;
import sledwright.web.api.BookReportHandler;
import sledwright.web.door.Doorman;
import sledwright.web.door.Entrance;
import sledwright.web.door.LoginHandler;
import sledwright.web.http.AccessLine;
import sledwright.web.http.ErrorAnswers;
import sledwright.web.http.Guard;
import sledwright.web.http.Patience;
import sledwright.web.links.CustomerPages;
import sledwright.web.links.LinkHandler;
import sledwright.web.links.LinkShelf;
import sledwright.web.page.BookPages;
import sledwright.web.page.ImportHandler;
import sledwright.web.page.PageHandler;
import sledwright.web.page.PlanHandler;
import sledwright.web.shop.LiveCatalog;
import sledwright.web.shop.OpenShop;
import sledwright.web.shop.Proposals;
import sledwright.web.queue.Departures;
import sledwright.web.queue.Reception;
import sledwright.web.queue.SearchQueue;
import sledwright.web.users.Staff;
import sledwright.web.users.UsersFile;

/** The server: a catalogue, a queue of questions, and what answers them over HTTP. */
public final class WebServer implements AutoCloseable {

    private static final int THREADS = 12;
    private static final long IDLE_MILLIS = 60_000;
    private static final long LOOKS_EVERY_S = 1;
    private static final long ENDS_WITHIN_MILLIS = 3_000;
    /** What a login is at most, how many wait for theirs, and how many passwords are checked at once: each takes 19 MiB. */
    private static final int LOGIN_BYTES = 2_000;
    private static final int LOGINS_WAITING = 32;
    private static final int LOGINS_AT_ONCE = 1;

    private final WebSettings settings;
    private final Server server;
    private final ServerConnector connector;
    private final SearchQueue queue;
    private final SearchQueue logins = new SearchQueue(LOGINS_AT_ONCE, LOGINS_WAITING);
    private final Departures departures = new Departures();
    private final ScheduledExecutorService watch = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "watch");
        thread.setDaemon(true);
        return thread;
    });

    private WebServer(WebSettings settings) {
        this.settings = settings;
        WebSettings.Bounds bounds = settings.bounds();
        LiveCatalog catalog = new LiveCatalog(settings.catalog(), new WarmUp());
        OpenShop shop = new OpenShop(catalog, settings.shelf());
        queue = new SearchQueue(bounds.searches(), bounds.waiting());
        Reception reception = new Reception(queue, bounds.bodyBytes(), bounds.patience(), departures, settings.defects());
        Optional<Staff> staff = settings.users().map(file -> new Staff(new UsersFile(file), settings.log()));
        Entrance entrance = Entrance.of(staff, settings.place().isSecure());
        LinkShelf links = new LinkShelf(settings.shelf()::ifThere, settings.shelf()::book);
        Proposals proposals = new Proposals(shop);
        Handler rooms = new Handler.Sequence(
                new LoginHandler(entrance, new Reception(logins, LOGIN_BYTES, bounds.patience(), departures, settings.defects()),
                        () -> catalog.state().catalog().name()),
                new PageHandler(shop, reception), new BookReportHandler(shop, proposals, reception), new BookHandler(shop, reception),
                new BookPages(shop, proposals, reception), new PlanHandler(shop, reception),
                new ImportHandler(shop.folder(), reception), new LinkHandler(shop::state, links, reception, this::reached),
                new CustomerPages(shop::state, links, reception), new ApiHandler(shop::state, reception));
        Patience patience = new Patience(bounds.patience(), bounds.connections(),
                new Guard(settings.place().names(), settings.place().byTls(), new Doorman(entrance, rooms)));
        QueuedThreadPool threads = new QueuedThreadPool(THREADS);
        threads.setName("http");
        threads.setDaemon(true);
        server = new Server(threads);
        connector = new ServerConnector(server, 1, 1, new HttpConnectionFactory(http(bounds)));
        connector.setHost(settings.place().host());
        connector.setPort(settings.place().port());
        connector.setIdleTimeout(IDLE_MILLIS);
        connector.addBean(patience);
        server.addConnector(connector);
        server.setHandler(patience);
        server.setErrorHandler(new ErrorAnswers());
        server.setRequestLog(new AccessLine(settings.log()));
        server.setStopTimeout(ENDS_WITHIN_MILLIS);
        watch.scheduleWithFixedDelay(() -> watched(() -> {
            patience.sweep();
            catalog.look();
            staff.ifPresent(Staff::look);
        }), LOOKS_EVERY_S, LOOKS_EVERY_S, TimeUnit.SECONDS);
    }

    private void watched(Runnable looks) {
        try {
            looks.run();
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
            WarmUp.ask(web.address());
            return web;
        } catch (IOException taken) {
            web.close();
            throw taken;
        } catch (Exception defect) {
            web.close();
            throw new IllegalStateException(defect);
        }
    }

    /** The address by which whoever asks reaches it, without a stroke at its end. */
    private String reached(Request request) {
        return settings.place().known().map(URI::toString).orElseGet(() -> "http://" + request.getHeaders().get(HttpHeader.HOST))
                .replaceFirst("/$", "");
    }

    /** Where it answers. */
    public URI address() {
        String named = settings.place().host();
        String host = named.contains(":") && !named.startsWith("[") ? "[" + named + "]" : named;
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
        logins.close();
        departures.close();
    }
}
