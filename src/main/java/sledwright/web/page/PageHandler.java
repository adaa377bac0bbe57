package sledwright.web.page;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpMethod;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.Fields;
import sledwright.desk.CompareQuestion;
import sledwright.desk.QuoteQuestion;
import sledwright.desk.Reply;
import sledwright.desk.Terms;
import sledwright.desk.view.CompareAnswer;
import sledwright.desk.view.QuoteAnswer;
import sledwright.input.Source;
import sledwright.report.ask.AnswerPiece;
import sledwright.report.ask.StepsPiece;
import sledwright.report.compare.ChartPiece;
import sledwright.report.page.Pages;
import sledwright.web.api.DeskReplies;
import sledwright.web.api.RequestBody;
import sledwright.web.http.AccessLine;
import sledwright.web.http.AnsweringHandler;
import sledwright.web.http.RefusedException;
import sledwright.web.http.Responses;
import sledwright.web.shop.ShopState;
import sledwright.web.work.Reception;
import sledwright.web.work.Visit;

/** The page and its pieces. */
public final class PageHandler extends AnsweringHandler {

    private static final String THROUGHPUT = "throughput";

    private static final String HTML = "text/html; charset=utf-8";
    private static final Duration TIME = Duration.ofSeconds(15);

    /** Makes a piece of the page from a request. */
    private interface Piece {
        String of(Source source, Fields query, ShopState shop, Terms terms);
    }

    private final Supplier<ShopState> shop;
    private final Reception reception;
    private final Map<String, Asset> assets = Asset.all();
    private final Map<String, Piece> pieces = Map.of("/page/answer", PageHandler::answer, "/page/steps", PageHandler::steps,
            "/page/chart", PageHandler::chart);

    /** @param shop as it stands at the moment */
    public PageHandler(Supplier<ShopState> shop, Reception reception) {
        this.shop = shop;
        this.reception = reception;
    }

    @Override
    protected boolean answers(Request request, Response response, Callback callback) {
        String path = Request.getPathInContext(request);
        boolean reads = HttpMethod.GET.is(request.getMethod()) || HttpMethod.HEAD.is(request.getMethod());
        boolean asks = HttpMethod.POST.is(request.getMethod());
        if (reads && path.equals("/")) {
            AccessLine.name(request, path);
            Responses.bytes(200, HTML, page().getBytes(StandardCharsets.UTF_8), request, response, callback);
            return true;
        }
        if (reads && assets.containsKey(path)) {
            AccessLine.name(request, path);
            Responses.bytes(200, assets.get(path).type(), assets.get(path).bytes(), request, response, callback);
            return true;
        }
        boolean loads = path.equals("/page/load");
        if (asks && (loads || pieces.containsKey(path))) {
            AccessLine.name(request, path);
            Fields query = query(request);
            String type = request.getHeaders().get(HttpHeader.CONTENT_TYPE);
            reception.serve(request, response, callback, false, (body, visit) -> {
                Source source = RequestBody.of(type, body);
                String made = loads ? Loaded.json(source) : pieces.get(path).of(source, query, shop.get(), terms(visit));
                visit.finish(() -> Responses.bytes(200, loads ? Responses.JSON : HTML, made.getBytes(StandardCharsets.UTF_8), request,
                        response, callback));
            });
            return true;
        }
        return false;
    }

    private static Terms terms(Visit visit) {
        return Terms.within(TIME).until(visit::isOver);
    }

    private String page() {
        ShopState now = shop.get();
        return Pages.filled("ask.ftlh", Map.of("shop", now.catalog().name(), "groups", Wishes.of(now.catalog()), "parts",
                now.catalog().parts(), "faults", now.faults().stream().map(Object::toString).toList()));
    }

    private static String answer(Source source, Fields query, ShopState shop, Terms terms) {
        List<String> whyNot = query.getValuesOrEmpty("why-not");
        Reply<QuoteAnswer> reply = shop.desk().quote(source, new QuoteQuestion(List.of(), whyNot, false), terms);
        return AnswerPiece.of(DeskReplies.of(reply).view(), shop.catalog());
    }

    private static String steps(Source source, Fields query, ShopState shop, Terms terms) {
        Reply<QuoteAnswer> reply = shop.desk().quote(source, new QuoteQuestion(List.of("alternatives=1"), List.of(),
                QuoteQuestion.Further.REQUIREMENTS), terms);
        return StepsPiece.of(DeskReplies.of(reply).view(), shop.catalog());
    }

    private static String chart(Source source, Fields query, ShopState shop, Terms terms) {
        String figure = query.getValuesOrEmpty("figure").stream().findFirst().orElse(THROUGHPUT);
        Reply<CompareAnswer> reply = shop.desk().compare(source, curve(figure), terms);
        // A request with a workload is about work.
        boolean ofWork = figure.equals(THROUGHPUT) && reply instanceof Reply.Misasked;
        return ChartPiece.of(DeskReplies.of(ofWork ? shop.desk().compare(source, curve("work"), terms) : reply).view(), shop.catalog());
    }

    private static CompareQuestion curve(String figure) {
        return new CompareQuestion(List.of(), List.of(figure), List.of("price"), List.of(), false, CompareQuestion.plain().together());
    }
}
