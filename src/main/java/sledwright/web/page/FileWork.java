package sledwright.web.page;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import sledwright.desk.Desk;
import sledwright.desk.QuoteQuestion;
import sledwright.desk.Reply;
import sledwright.desk.RestockQuestion;
import sledwright.desk.Terms;
import sledwright.desk.view.OfferAnswer;
import sledwright.input.Faults;
import sledwright.input.Source;
import sledwright.input.Value;
import sledwright.input.YamlReader;
import sledwright.report.check.CheckText;
import sledwright.report.order.OrderText;
import sledwright.report.quote.QuoteText;
import sledwright.report.restock.RestockText;
import sledwright.report.text.Json;
import sledwright.report.text.Screen;
import sledwright.report.upgrade.UpgradeText;
import sledwright.web.api.DeskReplies;
import sledwright.web.door.Visitor;
import sledwright.web.http.RefusedException;

/** Answers whatever kind of request somebody brings, as the text that the commands print. */
final class FileWork {

    /** Kind of request -> the question about it; any other is taken for a quote. */
    private static final Map<String, String> KINDS = Map.of("build", "check", "order", "order", "restock", "restock", "upgrade", "upgrade");

    private FileWork() {
    }

    /** @param price of what can be kept, all machines; null where there is none */
    private record Told(String text, BigDecimal price) {

        private Told(String text) {
            this(text, null);
        }

        private static Told of(String text, OfferAnswer answer) {
            return new Told(text, answer.price().orElse(null));
        }
    }

    /**
     * @return JSON whose {@code text} is the answer, with the price where it can be kept
     * @throws RefusedException when whoever asks may not ask this
     */
    static String answer(Desk desk, Source source, Terms terms, Visitor visitor) {
        String kind = kind(source);
        String question = KINDS.getOrDefault(kind, "quote");
        if (!visitor.may("POST", "/api/" + question)) {
            throw RefusedException.of(403, "kind", question, "is a question that the role %s may not ask".formatted(visitor.role()));
        }
        return Json.of(DeskReplies.of(told(kind, desk, source, terms)));
    }

    private static Reply<Told> told(String kind, Desk desk, Source source, Terms terms) {
        List<String> none = List.of();
        return switch (kind) {
            case "order" -> desk.order(source, none, terms).map(answer -> Told.of(OrderText.of(answer.view(), Screen.PAGE), answer));
            case "restock" -> desk.restock(source, new RestockQuestion(none, true), terms)
                    .map(view -> new Told(RestockText.of(view, Screen.PAGE)));
            case "upgrade" -> desk.upgrade(source, none, terms)
                    .map(answer -> new Told(UpgradeText.of(answer.view(), Screen.PAGE)));
            case "build" -> desk.check(source, none).map(view -> new Told(CheckText.of(view, Screen.PAGE)));
            default -> desk.quote(source, new QuoteQuestion(none, none, true), terms)
                    .map(answer -> Told.of(QuoteText.of(answer.view(), Screen.PAGE), answer));
        };
    }

    /** What the request calls itself; whatever is wrong with it is said by who reads it in full. */
    private static String kind(Source source) {
        return YamlReader.read(source, new Faults()).map(group -> group.values().get("kind"))
                .filter(Value.Scalar.class::isInstance).map(kind -> ((Value.Scalar) kind).text()).orElse("");
    }
}
