package sledwright.web.links;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
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
import sledwright.web.page.Wish;
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

    /** A wish that the customer may change. {@code asked}: what counts without a value; {@code least}, {@code most}: not of choices. */
    public record Room(Wish wish, String value, String asked, String least, String most, List<String> choices) {
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
            CustomerLink link = link(digest);
            String made = piece ? answer(link, wanted, visit) : page(link, wanted, visit);
            visit.finish(() -> Responses.html(200, made, request, response, callback));
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

    private CustomerLink link(String digest) {
        return shelf.ifThere().flatMap(links -> links.find(digest, LocalDate.now())).orElseThrow(() ->
                RefusedException.of(404, "the address", "", "is not answered any more; ask the shop for another"));
    }

    private String answer(CustomerLink link, Fields wanted, Visit visit) {
        QuoteQuestion question = new QuoteQuestion(Changeable.sets(link, wanted), List.of(), false);
        ShopState now = shop.get();
        QuoteView view = Changeable.inItsWords(() -> DeskReplies.of(now.desk().quote(Source.unwritten("request", link.request()), question,
                Terms.within(TIME).until(visit::isOver)))).view();
        if (view.day().stale()) {
            throw RefusedException.of(409, "the request", "", "cannot be answered today: the shop is about to renew its prices");
        }
        return CustomerPiece.of(view, now.catalog());
    }

    /** @param query what is no wish in it, such as what mail programs add to an address, counts for nothing */
    private String page(CustomerLink link, Fields query, Visit visit) {
        Fields wanted = new Fields();
        query.forEach(field -> link.may().stream().filter(may -> may.key().equals(field.getName())).forEach(may -> wanted.put(field)));
        String answer = "";
        List<String> faults = List.of();
        try {
            answer = answer(link, wanted, visit);
        } catch (RefusedException refused) {
            faults = refused.faults().stream().map(this::said).toList();
        }
        return Pages.filled("customer.ftlh", Map.of("shop", shop.get().catalog().name(), "name", link.name(),
                "until", Wording.english(shop.get().catalog()).day(link.until()),
                "rooms", link.may().stream().map(may -> room(link, may, wanted)).toList(),
                "faults", faults, "answer", new Markup(answer)));
    }

    private String said(Fault fault) {
        boolean wish = Changeable.FIGURES.contains(fault.file()) || Changeable.WORDS.contains(fault.file());
        return "%s %s.".formatted(wish ? Wishes.named(shop.get().catalog(), fault.file()).label() : "This", fault.message());
    }

    private Room room(CustomerLink link, Leeway may, Fields wanted) {
        Wish wish = Wishes.named(shop.get().catalog(), may.key());
        String given = wanted.getValue(may.key());
        String asked = Changeable.value(link.request(), may.key());
        return new Room(wish, given == null ? asked : given, asked,
                may.from().map(Object::toString).orElse(""), may.to().map(Object::toString).orElse(""), may.words());
    }
}
