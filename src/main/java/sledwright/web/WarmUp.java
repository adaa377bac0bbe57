package sledwright.web;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.function.Consumer;
import sledwright.desk.CompareQuestion;
import sledwright.desk.Desk;
import sledwright.desk.QuoteQuestion;
import sledwright.desk.Reply;
import sledwright.desk.Terms;
import sledwright.desk.view.QuoteAnswer;
import sledwright.input.Source;
import sledwright.report.quote.QuoteJson;

/** Asks a new desk what many ask, so that the first to ask does not wait for what Java and the search learn only by working. */
final class WarmUp implements Consumer<Desk> {

    private static final List<String> REQUESTS = List.of(
            "{ kind: quote, require: { cores: 8, memory_gb: 32 } }",
            "{ kind: quote, require: { cores: 20, memory_gb: 192, bandwidth_gbs: 100 }, limit: { lead_days: 7 } }",
            "{ kind: quote, require: { cores: 100000, memory_gb: 32 } }");
    private static final Duration EACH = Duration.ofSeconds(2);

    @Override
    public void accept(Desk desk) {
        for (String request : REQUESTS) {
            Source source = Source.of("warm-up", request.getBytes(StandardCharsets.UTF_8));
            Reply<QuoteAnswer> reply = desk.quote(source, new QuoteQuestion(List.of(), List.of(), true), Terms.within(EACH));
            reply.map(answer -> QuoteJson.of(answer.view()));
            desk.compare(source, CompareQuestion.plain(), Terms.within(EACH));
        }
    }
}
