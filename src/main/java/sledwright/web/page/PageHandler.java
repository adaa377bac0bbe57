package sledwright.web.page;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpMethod;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.Fields;
import sledwright.book.QuoteState;
import sledwright.catalog.CatalogTable;
import sledwright.desk.CatalogDesk;
import sledwright.desk.CompareQuestion;
import sledwright.desk.QuoteQuestion;
import sledwright.desk.Reply;
import sledwright.desk.Terms;
import sledwright.desk.view.CompareAnswer;
import sledwright.desk.view.QuoteAnswer;
import sledwright.input.Source;
import sledwright.report.ask.AnswerPiece;
import sledwright.report.ask.StepsPiece;
import sledwright.report.catalog.CatalogText;
import sledwright.report.compare.ChartPiece;
import sledwright.report.page.Pages;
import sledwright.report.stock.StockPiece;
import sledwright.report.text.Screen;
import sledwright.web.api.DeskReplies;
import sledwright.web.api.EventStream;
import sledwright.web.api.RequestBody;
import sledwright.web.door.Visitor;
import sledwright.web.http.AccessLine;
import sledwright.web.http.AnsweringHandler;
import sledwright.web.http.RefusedException;
import sledwright.web.http.Responses;
import sledwright.web.shop.OpenShop;
import sledwright.web.shop.ShopState;
import sledwright.web.queue.Reception;
import sledwright.web.queue.Visit;

/** The pages and their pieces. */
public final class PageHandler extends AnsweringHandler {

    private static final String THROUGHPUT = "throughput";

    private static final String PDF = "application/pdf";
    private static final Duration TIME = Duration.ofSeconds(15);
    private static final Duration LONG = Duration.ofMinutes(3);
    private static final int LINK_DAYS = 14;
    private static final String WORK = "/page/work";

    /** Makes a piece of a page, or a paper, from a request. */
    private interface Maker {
        byte[] make(Source source, Fields query, ShopState shop, Terms terms);

        static Maker of(Piece piece) {
            return (source, query, shop, terms) -> piece.make(source, query, shop, terms).getBytes(StandardCharsets.UTF_8);
        }
    }

    /** A piece that is a text. */
    private interface Piece {
        String make(Source source, Fields query, ShopState shop, Terms terms);
    }

    /** @param type media type of what is made */
    private record Made(String type, Maker maker) {
    }

    private final OpenShop catalog;
    private final Reception reception;
    private final Map<String, Asset> assets = Asset.all();
    private final Map<String, Function<Visitor, String>> pages = Map.of("/", this::askPage,
            "/work", this::workPage, "/book", this::bookPage,
            "/board", this::boardPage);
    private final Map<String, Made> pieces = Map.of(
            "/page/answer", new Made(Responses.HTML, Maker.of(PageHandler::answer)),
            "/page/steps", new Made(Responses.HTML, Maker.of(PageHandler::steps)),
            "/page/chart", new Made(Responses.HTML, Maker.of(PageHandler::chart)),
            "/page/board", new Made(Responses.HTML, Maker.of(BenchPapers::board)),
            "/page/hand", new Made(Responses.HTML, Maker.of(HandWork::board)),
            "/page/offer", new Made(PDF, BenchPapers::offer),
            "/page/sheet", new Made(PDF, BenchPapers::sheet),
            "/page/load", new Made(Responses.JSON, Maker.of((source, query, shop, terms) -> Loaded.json(source))));

    /** @param catalog as it stands at the moment */
    public PageHandler(OpenShop catalog, Reception reception) {
        this.catalog = catalog;
        this.reception = reception;
    }

    /** Where pages have something answered. */
    public Set<String> asked() {
        return Stream.concat(pieces.keySet().stream(), Stream.of(WORK)).collect(Collectors.toSet());
    }

    @Override
    protected boolean answers(Request request, Response response, Callback callback) {
        String path = Request.getPathInContext(request);
        if (pieces.containsKey(path) || path.equals(WORK)) {
            requireMethod(request, HttpMethod.POST);
            if (path.equals(WORK)) {
                work(request, response, callback);
            } else {
                piece(path, request, response, callback);
            }
            return true;
        }
        boolean waits = List.of("/catalogue", PageFrame.STOCK).contains(path);
        if (!waits && !pages.containsKey(path) && !assets.containsKey(path)) {
            return false;
        }
        requireMethod(request, HttpMethod.GET, HttpMethod.HEAD);
        AccessLine.name(request, path);
        if (waits) {
            reception.serve(request, response, callback, false, (body, visit) -> {
                Visitor visitor = Visitor.of(request);
                String page = path.equals(PageFrame.STOCK) ? stockPage(visitor) : cataloguePage(visitor);
                visit.finish(() -> Responses.html(200, page, request, response, callback));
            });
        } else if (pages.containsKey(path)) {
            Responses.html(200, pages.get(path).apply(Visitor.of(request)), request, response, callback);
        } else {
            Responses.bytes(200, assets.get(path).type(), assets.get(path).bytes(), request, response, callback);
        }
        return true;
    }

    private void piece(String path, Request request, Response response, Callback callback) {
        AccessLine.name(request, path);
        Fields query = query(request);
        Made made = pieces.get(path);
        String type = request.getHeaders().get(HttpHeader.CONTENT_TYPE);
        reception.serve(request, response, callback, false, (body, visit) -> {
            byte[] bytes = made.maker().make(RequestBody.of(type, body), query, catalog.state(), terms(TIME, visit));
            visit.finish(() -> Responses.bytes(200, made.type(), bytes, request, response, callback));
        });
    }

    private void work(Request request, Response response, Callback callback) {
        AccessLine.name(request, WORK);
        String type = request.getHeaders().get(HttpHeader.CONTENT_TYPE);
        reception.serve(request, response, callback, true, (body, visit) -> {
            EventStream stream = new EventStream(response, callback, visit::end);
            Terms terms = terms(LONG, visit).heardBy(stream::progress);
            String answer = FileWork.answer(catalog.state().desk(), RequestBody.of(type, body), terms, Visitor.of(request));
            visit.finish(() -> stream.answer(answer));
        });
    }

    private static Terms terms(Duration time, Visit visit) {
        return Terms.within(time).until(visit::isOver);
    }

    private String boardPage(Visitor visitor) {
        return Pages.filled("hand.ftlh", PageFrame.of(catalog, "board", visitor));
    }

    private String askPage(Visitor visitor) {
        Map<String, Object> model = new HashMap<>(PageFrame.of(catalog, "ask", visitor));
        model.put("groups", Wishes.of(catalog.state().catalog()));
        model.put("parts", catalog.state().catalog().parts());
        model.put("links", visitor.may("POST", "/api/links"));
        model.put("today", LocalDate.now().toString());
        model.put("linkday", LocalDate.now().plusDays(LINK_DAYS).toString());
        return Pages.filled("ask.ftlh", model);
    }

    private String workPage(Visitor visitor) {
        Map<String, Object> model = new HashMap<>(PageFrame.of(catalog, "work", visitor));
        model.put("picks", visitor.may("POST", "/api/book/2026-0001/pick"));
        model.put("orders", visitor.may("POST", "/api/order"));
        model.put("currency", catalog.state().catalog().currency().getCurrencyCode());
        return Pages.filled("work.ftlh", model);
    }

    private String bookPage(Visitor visitor) {
        Map<String, Object> model = new HashMap<>(PageFrame.of(catalog, "book", visitor));
        model.put("states", QuoteState.labels());
        model.put("life", BookTurn.LIFE);
        model.put("steps", BookTurn.ALL);
        model.put("parts", catalog.state().catalog().parts());
        return Pages.filled("book.ftlh", model);
    }

    private String stockPage(Visitor visitor) {
        Map<String, Object> model = new HashMap<>(PageFrame.of(catalog, "stock", visitor));
        try {
            model.putAll(StockPiece.of(catalog.state().catalog(), DeskReplies.of(CatalogDesk.check(catalog.folder()))));
        } catch (RefusedException faulty) {
            // What is wrong stands above the page.
            model.remove("groups");
        }
        return Pages.filled("stock.ftlh", model);
    }

    private String cataloguePage(Visitor visitor) {
        Map<String, Object> model = new HashMap<>(PageFrame.of(catalog, "catalogue", visitor));
        model.put("imports", visitor.may("POST", ImportHandler.LOOK));
        model.put("tables", CatalogTable.labels());
        try {
            model.put("text", CatalogText.of(DeskReplies.of(CatalogDesk.check(catalog.folder())), Screen.PAGE));
        } catch (RefusedException faulty) {
            model.put("text", "");
        }
        return Pages.filled("catalogue.ftlh", model);
    }

    private static String answer(Source source, Fields query, ShopState shop, Terms terms) {
        List<String> whyNot = query.getValuesOrEmpty("why-not");
        Reply<QuoteAnswer> reply = shop.desk().quote(source, new QuoteQuestion(List.of(), whyNot, false), terms);
        return AnswerPiece.of(DeskReplies.of(reply).view(), shop.catalog());
    }

    private static String steps(Source source, Fields query, ShopState shop, Terms terms) {
        QuoteAnswer answer = DeskReplies.of(shop.desk().quote(source, new QuoteQuestion(List.of("alternatives=1"), List.of(),
                QuoteQuestion.Further.REQUIREMENTS), terms));
        return StepsPiece.of(answer.view(), shop.desk().otherLimits(answer, terms), shop.catalog());
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
