package sledwright.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import sledwright.book.store.BookPlace;
import sledwright.browser.Browser;
import sledwright.samples.Folders;
import sledwright.web.shop.BookShelf;

/** Servers that tests ask. Two are shared by the whole run, for nothing that they are asked changes them. */
public final class Servers {

    /** Roomy enough that no test which does not want to be refused is. */
    public static final WebSettings.Bounds ROOMY = new WebSettings.Bounds(200_000, 8_192, Duration.ofSeconds(20), 64, 2, 64);

    private static WebServer small;
    private static WebServer demo;

    private Servers() {
    }

    /** The small sample shop. */
    public static synchronized WebServer small() {
        small = small == null ? start(Folders.SHOP, ROOMY, new CopyOnWriteArrayList<>()) : small;
        return small;
    }

    /** The demo shop. */
    public static synchronized WebServer demo() {
        demo = demo == null ? start(Path.of("catalogs/heronfold-yard"), ROOMY, new CopyOnWriteArrayList<>()) : demo;
        return demo;
    }

    /** One of the caller's own, which the caller closes; a defect of the program is written to the log, too. */
    public static WebServer start(Path shop, WebSettings.Bounds bounds, List<String> log) {
        return start(shop, Optional.empty(), bounds, log);
    }

    /** @param users the file of those who may come in */
    public static WebServer start(Path shop, Optional<Path> users, WebSettings.Bounds bounds, List<String> log) {
        return start(shop, freshBook(), users, bounds, log);
    }

    /** One of the caller's own whose quotes are kept in a file; nothing is there before the first. */
    public static WebServer start(Path shop, Path book, Optional<Path> users, WebSettings.Bounds bounds, List<String> log) {
        try {
            return WebServer.start(new WebSettings(shop, new BookShelf(BookPlace.of(book), "test"), WebSettings.Place.here(0), users, bounds, log::add,
                    defect -> log.add("defect: " + defect)));
        } catch (IOException taken) {
            throw new UncheckedIOException(taken);
        }
    }

    /** One that browsers of other machines reach by a name, without TLS, as in a shop's own network; {@link Browser} knows the name. */
    public static WebServer inTheNetwork(Path shop, Path book) throws IOException {
        return WebServer.start(new WebSettings(shop, new BookShelf(BookPlace.of(book), "test"),
                new WebSettings.Place("127.0.0.1", 0, Optional.of(URI.create("http://" + Browser.IN_THE_NETWORK))), Optional.empty(), ROOMY, said -> { }, defect -> { }));
    }

    /** One of the caller's own in the place of another that is closed, whose address and book it has. */
    public static WebServer instead(URI address, Path shop, Path book) throws IOException {
        return WebServer.start(new WebSettings(shop, new BookShelf(BookPlace.of(book), "test"), WebSettings.Place.here(address.getPort()), Optional.empty(), ROOMY, said -> { },
                defect -> { }));
    }

    /** Where no book is yet: each server has its own, so that none knows what another keeps. */
    private static Path freshBook() {
        try {
            return Files.createTempDirectory("book").resolve("book.db");
        } catch (IOException full) {
            throw new UncheckedIOException(full);
        }
    }
}
