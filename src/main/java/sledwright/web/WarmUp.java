package sledwright.web;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.function.Consumer;
import sledwright.desk.CompareQuestion;
import sledwright.desk.Desk;
import sledwright.desk.QuoteQuestion;
import sledwright.desk.QuoteQuestion.Further;
import sledwright.desk.Terms;
import sledwright.input.Source;
import sledwright.report.quote.QuoteJson;

/**
 * Asks a new desk what many ask, so that the first to ask does not wait for what Java and the search learn only by working: a little of it
 * before anybody is answered, the rest beside the first answers.
 */
final class WarmUp implements Consumer<Desk> {

    private static final List<String> REQUESTS = List.of(
            "{ kind: quote, require: { cores: 8, memory_gb: 32 } }",
            "{ kind: quote, require: { cores: 20, memory_gb: 192, bandwidth_gbs: 100 }, limit: { lead_days: 7 } }",
            "{ kind: quote, require: { cores: 16, memory_gb: 256 } }",
            "{ kind: quote, require: { cores: 32, memory_gb: 128, spare_slots: 2 }, limit: { conditions: [used] } }",
            "{ kind: quote, require: { cores: 100000, memory_gb: 32 } }");
    private static final Duration FIRST = Duration.ofSeconds(3);
    private static final Duration REST = Duration.ofSeconds(20);

    @Override
    public void accept(Desk desk) {
        long end = System.nanoTime() + FIRST.toNanos();
        REQUESTS.forEach(request -> quote(desk, request, Further.NOTHING, end));
        Thread rest = new Thread(() -> rest(desk), "warm-up");
        rest.setDaemon(true);
        rest.setPriority(Thread.MIN_PRIORITY);
        rest.start();
    }

    private static void rest(Desk desk) {
        long end = System.nanoTime() + REST.toNanos();
        REQUESTS.forEach(request -> quote(desk, request, Further.REQUIREMENTS, end));
        REQUESTS.forEach(request -> desk.compare(source(request), CompareQuestion.plain(), terms(end)));
    }

    private static void quote(Desk desk, String request, Further further, long end) {
        desk.quote(source(request), new QuoteQuestion(List.of(), List.of(), further), terms(end))
                .map(answer -> QuoteJson.of(answer.view()));
    }

    private static Source source(String request) {
        return Source.of("warm-up", request.getBytes(StandardCharsets.UTF_8));
    }

    /** Over at once when the time for all of it is. */
    private static Terms terms(long end) {
        return Terms.within(REST).until(() -> System.nanoTime() > end);
    }
}
