package sledwright.web;

import java.nio.file.Path;
import java.time.Duration;
import java.util.function.Consumer;

/**
 * What a server is to be.
 *
 * @param catalog the folder of the shop
 * @param host    the address it listens at; only this machine can ask at {@code 127.0.0.1}
 * @param port    0: any that is free
 * @param bounds  what it takes of anybody
 * @param log     hears a line for each request
 * @param defects receives what the program does wrong
 */
public record WebSettings(Path catalog, String host, int port, Bounds bounds, Consumer<String> log, Consumer<Throwable> defects) {

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
