package sledwright.web.links;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpMethod;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.Fields;
import sledwright.book.CustomerLink;
import sledwright.book.Leeway;
import sledwright.desk.QuoteQuestion;
import sledwright.desk.Terms;
import sledwright.input.Faults;
import sledwright.input.Source;
import sledwright.input.YamlReader;
import sledwright.report.text.Json;
import sledwright.web.api.DeskReplies;
import sledwright.web.api.RequestBody;
import sledwright.web.door.Visitor;
import sledwright.web.http.AccessLine;
import sledwright.web.http.AnsweringHandler;
import sledwright.web.http.RefusedException;
import sledwright.web.http.Responses;
import sledwright.web.queue.Reception;
import sledwright.web.shop.ShopState;
import sledwright.web.users.Secrets;

/** How the shop makes, lists and ends customers' links. */
public final class LinkHandler extends AnsweringHandler {

    static final String PATH = "/api/links";

    private static final int LONGEST_DAYS = 90;
    private static final int DAYS = 14;
    private static final int LONGEST_NAME = 80;

    /** A link that was made; its address is told this once. */
    public record Made(String id, String address, String until) {
    }

    /** A link that is kept. */
    public record Kept(String id, String customer, String name, String until, String by, List<String> may) {
    }

    /** All of them. */
    public record Listed(List<Kept> links) {
    }

    private final Supplier<ShopState> shop;
    private final LinkShelf shelf;
    private final Reception reception;
    private final Function<Request, String> base;

    /** @param base the address by which whoever asked reaches the server, without a stroke at its end */
    public LinkHandler(Supplier<ShopState> shop, LinkShelf shelf, Reception reception, Function<Request, String> base) {
        this.shop = shop;
        this.shelf = shelf;
        this.reception = reception;
        this.base = base;
    }

    @Override
    protected boolean answers(Request request, Response response, Callback callback) {
        String path = Request.getPathInContext(request);
        boolean posts = HttpMethod.POST.is(request.getMethod());
        if (path.equals(PATH)) {
            AccessLine.name(request, PATH);
            requireMethod(request, HttpMethod.GET, HttpMethod.POST);
            if (posts) {
                make(request, response, callback);
            } else {
                reception.serve(request, response, callback, false, (body, visit) -> {
                    String all = list();
                    visit.finish(() -> Responses.json(200, all, request, response, callback));
                });
            }
        } else if (posts && path.startsWith(PATH + "/") && path.endsWith("/end")) {
            AccessLine.name(request, PATH + "/ID/end");
            String id = path.substring(PATH.length() + 1, path.length() - "/end".length());
            reception.serve(request, response, callback, false, (body, visit) -> {
                if (!shelf.ifThere().map(links -> links.end(id)).orElse(false)) {
                    throw RefusedException.of(404, "the address", "", "names no link that is not over");
                }
                visit.finish(() -> Responses.json(200, "{}\n", request, response, callback));
            });
        } else {
            return false;
        }
        return true;
    }

    private void make(Request request, Response response, Callback callback) {
        Fields query = query(request);
        query.forEach(field -> {
            if (!List.of("may", "until", "customer").contains(field.getName())) {
                throw RefusedException.of(400, "the address", field.getName(),
                        "is no option of a link; options are may, until and customer");
            }
        });
        List<Leeway> may = Changeable.read(query.getValuesOrEmpty("may"));
        LocalDate until = until(query.getValue("until"), LocalDate.now());
        Optional<String> named = Optional.ofNullable(query.getValue("customer")).map(String::strip).filter(who -> !who.isEmpty());
        String type = request.getHeaders().get(HttpHeader.CONTENT_TYPE);
        RequestBody.of(type, new byte[] {'{', '}'});
        String by = Visitor.of(request).name();
        reception.serve(request, response, callback, false, (body, visit) -> {
            Source source = RequestBody.of(type, body);
            Optional<String> addressed = requireReadable(source, may);
            String text = text(source);
            String secret = Secrets.fresh();
            String name = Changeable.value(text, "name");
            String shortName = name.length() > LONGEST_NAME ? name.substring(0, LONGEST_NAME) : name;
            CustomerLink link = new CustomerLink(Secrets.digest(secret), named.or(() -> addressed).orElse(""), shortName, text, may, until,
                    new CustomerLink.Made(by, Instant.now()));
            shelf.links().keep(link, LocalDate.now());
            String answer = Json.of(new Made(link.id(), base.apply(request) + CustomerPages.PATH + secret, until.toString()));
            visit.finish(() -> Responses.json(200, answer, request, response, callback));
        });
    }

    private static LocalDate until(String given, LocalDate today) {
        LocalDate last = today.plusDays(LONGEST_DAYS);
        try {
            LocalDate until = given == null ? today.plusDays(DAYS) : LocalDate.parse(given);
            if (!until.isBefore(today) && !until.isAfter(last)) {
                return until;
            }
        } catch (DateTimeParseException noDay) {
            // Said below.
        }
        throw RefusedException.of(400, "until", given, "must be a day from %s to %s".formatted(today, last));
    }

    private static String text(Source source) {
        return new String(source.bytes(YamlReader.MOST_MEGABYTES, new Faults()).orElse(new byte[0]), StandardCharsets.UTF_8);
    }

    /** The desk must be able to read the request with either end of what may be changed; returns to whom it says that it is addressed. */
    private Optional<String> requireReadable(Source source, List<Leeway> may) {
        Optional<String> addressed = Optional.empty();
        for (boolean least : new boolean[] {true, false}) {
            // It is read, but nothing is searched: whoever opens the link has it answered.
            QuoteQuestion question = new QuoteQuestion(Changeable.atOneEnd(may, least), List.of(), false);
            addressed = Changeable.inWordsOf("may ", () -> DeskReplies.of(shop.get().desk().quote(source, question,
                    Terms.within(CustomerPages.TIME).until(() -> true)))).customer().stream().findFirst();
        }
        return addressed;
    }

    private String list() {
        List<CustomerLink> all = shelf.ifThere().map(links -> links.all(LocalDate.now())).orElse(List.of());
        return Json.of(new Listed(all.stream().map(link -> new Kept(link.id(), link.customer(), link.name(), link.until().toString(),
                link.made().by(),
                link.may().stream().map(Leeway::toString).toList())).toList()));
    }
}
