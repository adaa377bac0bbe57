package sledwright.web.api;

import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpMethod;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import sledwright.desk.Desk;
import sledwright.desk.Terms;
import sledwright.input.Source;
import sledwright.web.http.AccessLine;
import sledwright.web.http.AnsweringHandler;
import sledwright.web.http.RefusedException;
import sledwright.web.http.Responses;
import sledwright.web.queue.Reception;
import sledwright.web.shop.ShopState;

/** Everything under {@code /api/}. */
public final class ApiHandler extends AnsweringHandler {

    private static final String PREFIX = "/api/";
    private static final String HEALTH = "/api/health";
    private static final String READY = "{\"status\":\"ready\"}\n";

    private final Supplier<ShopState> shop;
    private final Reception reception;
    private final Map<String, Inquiry> inquiries = Inquiry.ALL.stream().collect(Collectors.toMap(one -> PREFIX + one.name(), one -> one));

    /** @param shop as it stands at the moment */
    public ApiHandler(Supplier<ShopState> shop, Reception reception) {
        this.shop = shop;
        this.reception = reception;
    }

    @Override
    protected boolean answers(Request request, Response response, Callback callback) {
        String path = Request.getPathInContext(request);
        if (!path.startsWith(PREFIX)) {
            return false;
        }
        if (path.equals(HEALTH) || path.equals(OpenApi.ADDRESS)) {
            AccessLine.name(request, path);
            requireMethod(request, HttpMethod.GET, HttpMethod.HEAD);
            Responses.json(200, path.equals(HEALTH) ? READY : OpenApi.DOCUMENT, request, response, callback);
        } else if (path.equals(MailQuestion.PATH)) {
            read(request, response, callback);
        } else {
            ask(path, request, response, callback);
        }
        return true;
    }

    private void read(Request request, Response response, Callback callback) {
        AccessLine.name(request, MailQuestion.PATH);
        requireMethod(request, HttpMethod.POST);
        QueryOptions options = QueryOptions.of(query(request), MailQuestion.KEYS);
        options.today();
        String type = request.getHeaders().get(HttpHeader.CONTENT_TYPE);
        RequestBody.of(type, new byte[] {'{', '}'});
        reception.serve(request, response, callback, false, (body, visit) -> {
            String answer = MailQuestion.answer(RequestBody.of(type, body), shop.get().catalog(), options.today());
            visit.finish(() -> Responses.json(200, answer, request, response, callback));
        });
    }

    private void ask(String path, Request request, Response response, Callback callback) {
        Inquiry inquiry = inquiries.get(path);
        if (inquiry == null) {
            throw RefusedException.of(404, "the address", "", "is nothing that is answered here; questions are "
                    + String.join(", ", inquiries.keySet().stream().sorted().toList()));
        }
        AccessLine.name(request, path);
        requireMethod(request, HttpMethod.POST);
        QueryOptions options = QueryOptions.of(query(request), inquiry.keys());
        Terms terms = Terms.within(options.time(inquiry.seconds())).withSeed(options.seed());
        options.today();
        String type = request.getHeaders().get(HttpHeader.CONTENT_TYPE);
        boolean streams = request.getHeaders().contains(HttpHeader.ACCEPT, EventStream.TYPE);
        // Refused before anything is read.
        RequestBody.of(type, new byte[] {'{', '}'});
        reception.serve(request, response, callback, inquiry.takesLong(), (body, visit) -> {
            Source source = RequestBody.of(type, body);
            Terms own = terms.until(visit::isOver);
            if (streams) {
                EventStream stream = new EventStream(response, callback, visit::end);
                String answer = answer(inquiry, source, options, own.heardBy(stream::progress));
                visit.finish(() -> stream.answer(answer));
            } else {
                String answer = answer(inquiry, source, options, own);
                visit.finish(() -> Responses.json(200, answer, request, response, callback));
            }
        });
    }

    private String answer(Inquiry inquiry, Source source, QueryOptions options, Terms terms) {
        Desk asked = options.today().map(day -> shop.get().desk().by(() -> day)).orElseGet(() -> shop.get().desk());
        return DeskReplies.of(inquiry.asking().ask(asked, source, options, terms));
    }
}
