package sledwright.web.links;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import org.eclipse.jetty.http.HttpMethod;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.Fields;
import sledwright.book.CustomerLink;
import sledwright.book.Leeway;
import sledwright.desk.QuoteQuestion;
import sledwright.desk.Terms;
import sledwright.desk.view.QuoteView;
import sledwright.input.Fault;
import sledwright.input.Source;
import sledwright.report.ask.CustomerPiece;
import sledwright.report.page.Markup;
import sledwright.report.page.Pages;
import sledwright.report.page.Wording;
import sledwright.web.api.DeskReplies;
import sledwright.web.http.AccessLine;
import sledwright.web.http.AnsweringHandler;
import sledwright.web.http.RefusedException;
import sledwright.web.http.Responses;
import sledwright.web.page.Wishes;
import sledwright.web.queue.Reception;
import sledwright.web.queue.Turn;
import sledwright.web.queue.Visit;
import sledwright.web.shop.ShopState;
import sledwright.web.users.Secrets;

/**
 * What a customer sees by a link: a few wishes within their limits, and what can be had. Nothing is kept of what they try. What is the
 * shop's alone never reaches what is written here.
 */
public final class CustomerPages extends AnsweringHandler {

    static final String PATH = "/for/";
    static final Duration TIME = Duration.ofSeconds(10);

    private static final String PIECE = "/answer";
    private static final int LONGEST_SECRET = 100;
    private static final int AT_ONCE = 4;

    /** A wish that the customer may change. {@code unit}: may be empty; {@code range}: null where it is one of some choices. */
    public record Room(String key, String label, String unit, String value, Range range, List<Choice> choices) {
    }

    /** Between which values a figure may be, and in words, too. */
    public record Range(String least, String most, String words) {
    }

    /** A word of the request, and what people call it. */
    public record Choice(String value, String label) {
    }

    private final Supplier<ShopState> shop;
    private final LinkShelf shelf;
    private final Reception reception;
    /** Digest of a link -> questions of it that are not answered yet. */
    private final Map<String, Integer> open = new ConcurrentHashMap<>();

    public CustomerPages(Supplier<ShopState> shop, LinkShelf shelf, Reception reception) {
        this.shop = shop;
        this.shelf = shelf;
        this.reception = reception;
    }

    @Override
    protected boolean answers(Request request, Response response, Callback callback) {
        String path = Request.getPathInContext(request);
        if (!path.startsWith(PATH)) {
            return false;
        }
        AccessLine.name(request, "/for/LINK");
        requireMethod(request, HttpMethod.GET, HttpMethod.HEAD);
        boolean piece = path.endsWith(PIECE);
        String secret = path.substring(PATH.length(), path.length() - (piece ? PIECE.length() : 0));
        Fields wanted = query(request);
        String digest = Secrets.digest(secret.length() > LONGEST_SECRET ? "" : secret);
        begin(digest, request);
        reception.serve(request, response, callback, Turn.CUSTOMER, (body, visit) -> {
            Optional<CustomerLink> link = shelf.ifThere().flatMap(links -> links.find(digest, LocalDate.now()));
            if (link.isEmpty() && !Responses.isForAPerson(request)) {
                throw RefusedException.of(404, "the address", "", "is not answered any more; ask the shop for another");
            }
            String made = link.map(found -> piece ? answer(found, wanted, visit) : page(found, wanted, visit)).orElseGet(this::ended);
            visit.finish(() -> Responses.html(link.isEmpty() ? 404 : 200, made, request, response, callback));
        });
        return true;
    }

    /** Few questions of a link are answered at once, so that no customer takes the machine from all others. */
    private void begin(String digest, Request request) {
        if (open.merge(digest, 1, Integer::sum) > AT_ONCE) {
            end(digest);
            throw RefusedException.of(429, "the request", "", "comes while others of the same link are being answered; ask again soon")
                    .with("Retry-After", "1");
        }
        Request.addCompletionListener(request, done -> end(digest));
    }

    private void end(String digest) {
        open.computeIfPresent(digest, (same, count) -> count == 1 ? null : count - 1);
    }

    /** What a customer reads whose link is over. */
    private String ended() {
        Wording words = Wording.of(shop.get().catalog());
        return Pages.filled("refused.ftlh", Map.of("language", words.language(), "title", words.say("link.ended"), "status", "404",
                "faults", List.of(words.say("link.over"))));
    }

    private String answer(CustomerLink link, Fields wanted, Visit visit) {
        ShopState now = shop.get();
        Wording words = Wording.of(now.catalog());
        QuoteQuestion question = new QuoteQuestion(Changeable.sets(link, wanted, words), List.of(), false);
        QuoteView view = Changeable.inItsWords(() -> DeskReplies.of(now.desk().quote(Source.unwritten("request", link.request()), question,
                Terms.within(TIME).until(visit::isOver)))).view();
        if (view.day().stale()) {
            throw RefusedException.of(409, "the request", "", words.say("link.stale"));
        }
        return CustomerPiece.of(view, now.catalog());
    }

    /** @param query what is no wish in it, such as what mail programs add to an address, counts for nothing */
    private String page(CustomerLink link, Fields query, Visit visit) {
        Fields wanted = new Fields();
        query.forEach(field -> link.may().stream().filter(may -> may.key().equals(field.getName())).forEach(may -> wanted.put(field)));
        Wording words = Wording.of(shop.get().catalog());
        String answer = "";
        List<String> faults = List.of();
        try {
            answer = answer(link, wanted, visit);
        } catch (RefusedException refused) {
            faults = refused.faults().stream().map(fault -> said(fault, words)).toList();
        }
        return Pages.filled("customer.ftlh", Map.of("shop", shop.get().catalog().name(), "name", link.name(),
                "until", words.say("link.until", words.day(link.until())), "language", words.language(), "say", words.texts(),
                "rooms", link.may().stream().map(may -> room(link, may, wanted, words)).toList(),
                "faults", faults, "answer", new Markup(answer)));
    }

    private static String said(Fault fault, Wording words) {
        boolean wish = Changeable.FIGURES.contains(fault.file()) || Changeable.WORDS.contains(fault.file());
        String subject = wish ? label(fault.file(), words) : words.say("link.this");
        return subject + (fault.message().startsWith(":") ? "" : " ") + fault.message() + ".";
    }

    private static String label(String key, Wording words) {
        return words.say("link.wish." + key);
    }

    private Room room(CustomerLink link, Leeway may, Fields wanted, Wording words) {
        String given = wanted.getValue(may.key());
        String asked = Changeable.value(link.request(), may.key());
        String unit = may.key().equals("limit.lead_days") ? words.say("link.days") : Wishes.named(shop.get().catalog(), may.key()).unit();
        return new Room(may.key(), label(may.key(), words), unit, given == null ? asked : given,
                may.isFigure() ? range(may.from().orElseThrow(), may.to().orElseThrow(), asked, words) : null,
                may.words().stream().map(word -> new Choice(word, called(may.key(), word, words))).toList());
    }

    private static Range range(BigDecimal from, BigDecimal to, String asked, Wording words) {
        String least = words.figure(from);
        String most = words.figure(to);
        return new Range(from.toPlainString(), to.toPlainString(),
                asked.isEmpty() ? words.say("link.range", least, most) : words.say("link.range.asked", least, most, asked));
    }

    /** Workloads are called as the shop calls them. */
    private static String called(String key, String word, Wording words) {
        return switch (key) {
            case "limit.conditions" -> words.say("condition." + word);
            case "require.memory_mode" -> words.say("mode." + word);
            default -> word.replace('-', ' ');
        };
    }
}
