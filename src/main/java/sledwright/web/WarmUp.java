package sledwright.web;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.function.Consumer;
import sledwright.desk.CompareQuestion;
import sledwright.desk.QuoteQuestion;
import sledwright.desk.QuoteQuestion.Further;
import sledwright.desk.Terms;
import sledwright.desk.view.OtherLimits;
import sledwright.desk.view.QuoteAnswer;
import sledwright.input.Source;
import sledwright.report.ask.AnswerPiece;
import sledwright.report.ask.StepsPiece;
import sledwright.report.quote.QuoteJson;
import sledwright.web.shop.ShopState;

/**
 * Asks a new desk what many ask, so that the first to ask does not wait for what Java and the search learn only by working: a little of it
 * before anybody is answered, the rest beside the first answers.
 */
final class WarmUp implements Consumer<ShopState> {

    private static final List<String> REQUESTS = List.of(
            "{ kind: quote, require: { cores: 8, memory_gb: 32 } }",
            "{ kind: quote, require: { cores: 20, memory_gb: 192, bandwidth_gbs: 100 }, limit: { lead_days: 7 } }",
            "{ kind: quote, require: { cores: 16, memory_gb: 256 } }",
            "{ kind: quote, require: { cores: 32, memory_gb: 128, spare_slots: 2 }, limit: { conditions: [used] } }",
            "{ kind: quote, require: { cores: 100000, memory_gb: 32 } }");
    private static final int MOST_MILLIS = 1_000;
    private static final Duration FIRST = Duration.ofSeconds(3);
    private static final Duration REST = Duration.ofSeconds(20);

    @Override
    public void accept(ShopState shop) {
        long end = System.nanoTime() + FIRST.toNanos();
        REQUESTS.forEach(request -> quote(shop, request, Further.NOTHING, end));
        Thread rest = new Thread(() -> rest(shop), "warm-up");
        rest.setDaemon(true);
        rest.setPriority(Thread.MIN_PRIORITY);
        rest.start();
    }

    /** A first request, so that nobody else waits for what the server learns only by being asked; the log has it as it has every other. */
    static void ask(URI server) {
        try (Socket socket = new Socket()) {
            socket.connect(new InetSocketAddress(server.getHost(), server.getPort()), MOST_MILLIS);
            socket.setSoTimeout(MOST_MILLIS);
            socket.getOutputStream().write("GET /api/health HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"
                    .getBytes(StandardCharsets.US_ASCII));
            socket.getInputStream().readAllBytes();
        } catch (IOException unreached) {
            // Then the first who asks waits a little longer.
        }
    }

    private static void rest(ShopState shop) {
        long end = System.nanoTime() + REST.toNanos();
        REQUESTS.forEach(request -> quote(shop, request, Further.REQUIREMENTS, end));
        REQUESTS.forEach(request -> shop.desk().compare(source(request), CompareQuestion.plain(), terms(end)));
    }

    /** As the page and as programs are answered. */
    private static void quote(ShopState shop, String request, Further further, long end) {
        shop.desk().quote(source(request), new QuoteQuestion(List.of(), List.of(), further), terms(end)).map(QuoteAnswer::view)
                .map(view -> QuoteJson.of(view) + (further == Further.NOTHING ? AnswerPiece.of(view, shop.catalog())
                        : StepsPiece.of(view, OtherLimits.NONE, shop.catalog())));
    }

    private static Source source(String request) {
        return Source.of("warm-up", request.getBytes(StandardCharsets.UTF_8));
    }

    /** Over at once when the time for all of it is. */
    private static Terms terms(long end) {
        return Terms.within(REST).until(() -> System.nanoTime() > end);
    }
}
