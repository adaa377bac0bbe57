package sledwright.web;

import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import sledwright.web.shop.BookShelf;

/**
 * What a server is to be.
 *
 * @param catalog the folder of the shop
 * @param shelf   where the book of quotes stands; whoever made it closes it
 * @param place   where it listens
 * @param users   who may come in; empty: whoever reaches it
 * @param bounds  what it takes of anybody
 * @param log     hears a line for each request
 * @param defects receives what the program does wrong
 */
public record WebSettings(Path catalog, BookShelf shelf, Place place, Optional<Path> users, Bounds bounds, Consumer<String> log,
        Consumer<Throwable> defects) {

    /** Addresses that only this machine reaches. */
    public static final Set<String> LOOPBACK = Set.of("127.0.0.1", "localhost", "::1", "[::1]");

    private static final Set<String> EVERYWHERE = Set.of("0.0.0.0", "::", "[::]");

    /**
     * Where a server listens, and how it is called.
     *
     * @param host   the address it listens at; only this machine can ask at {@code 127.0.0.1}
     * @param port   0: any that is free
     * @param known  the address by which browsers reach it, where that is another
     */
    public record Place(String host, int port, Optional<URI> known) {

        public static Place here(int port) {
            return new Place("127.0.0.1", port, Optional.empty());
        }

        /** Whether only this machine reaches it. */
        public boolean isLoopback() {
            return LOOPBACK.contains(host);
        }

        /** Whether it listens at every address of the machine, so that {@code host} is no name of it. */
        public boolean isEverywhere() {
            return EVERYWHERE.contains(host);
        }

        /** Whether browsers reach it by TLS. */
        public boolean isSecure() {
            return byTls().isPresent();
        }

        /** The name by which browsers reach it by TLS. */
        Optional<String> byTls() {
            return known.filter(address -> "https".equals(address.getScheme())).map(URI::getHost);
        }

        /** The names by which it may be called, without ports. */
        Set<String> names() {
            Set<String> names = new HashSet<>(LOOPBACK);
            if (!isEverywhere()) {
                names.add(host.toLowerCase(Locale.ROOT));
            }
            known.map(URI::getHost).map(name -> name.toLowerCase(Locale.ROOT)).ifPresent(names::add);
            return names;
        }
    }

    /**
     * What a server takes.
     *
     * @param bodyBytes   of a request
     * @param headerBytes of the first line and the headers of a request
     * @param patience    for a request to come in full
     * @param connections that are open at once
     * @param searches    that are worked on at once
     * @param waiting     questions of a kind, short or long, that may wait for that
     */
    public record Bounds(int bodyBytes, int headerBytes, Duration patience, int connections, int searches, int waiting) {

        /** As this machine can bear. */
        public static Bounds ofThisMachine() {
            return new Bounds(1_000_000, 16_384, Duration.ofSeconds(20), 256, Runtime.getRuntime().availableProcessors(), 64);
        }
    }
}
