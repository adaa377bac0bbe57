package sledwright.web.page;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.jetty.http.HttpMethod;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import sledwright.book.Allocated;
import sledwright.book.PastDemand;
import sledwright.book.Signature;
import sledwright.desk.Terms;
import sledwright.report.book.AllocationPiece;
import sledwright.report.book.PastPiece;
import sledwright.report.page.Pages;
import sledwright.report.text.Json;
import sledwright.web.api.BookReplies;
import sledwright.web.api.BookReportHandler;
import sledwright.web.api.EventStream;
import sledwright.web.door.Visitor;
import sledwright.web.http.AccessLine;
import sledwright.web.http.AnsweringHandler;
import sledwright.web.http.RefusedException;
import sledwright.web.http.Responses;
import sledwright.web.queue.Reception;
import sledwright.web.shop.OpenShop;
import sledwright.web.shop.PastQuotes;
import sledwright.web.shop.Proposals;

/** Pages about many quotes at once: what was asked for and lost, and what is promised. */
public final class BookPages extends AnsweringHandler {

    static final String DRAW = "/page/allocate";
    private static final Duration LONG = Duration.ofMinutes(3);
    private static final String USUAL_MONTHS = "6";

    /** A draw as the page has it, and the name by which it is applied. */
    private record Told(String html, String proposal) {
    }

    private final OpenShop shop;
    private final Proposals proposals;
    private final Reception reception;

    public BookPages(OpenShop shop, Proposals proposals, Reception reception) {
        this.shop = shop;
        this.proposals = proposals;
        this.reception = reception;
    }

    @Override
    protected boolean answers(Request request, Response response, Callback callback) {
        String path = Request.getPathInContext(request);
        boolean reads = HttpMethod.GET.is(request.getMethod()) || HttpMethod.HEAD.is(request.getMethod());
        if (reads && List.of(PageFrame.ASKED, PageFrame.PROMISES).contains(path)) {
            AccessLine.name(request, path);
            String months = query(request).getValuesOrEmpty("months").stream().findFirst().orElse(USUAL_MONTHS);
            reception.serve(request, response, callback, false, (body, visit) -> {
                Visitor visitor = Visitor.of(request);
                String page = path.equals(PageFrame.ASKED) ? asked(months, visitor) : promises(visitor);
                visit.finish(() -> Responses.html(200, page, request, response, callback));
            });
        } else if (HttpMethod.POST.is(request.getMethod()) && path.equals(DRAW)) {
            draw(request, response, callback);
        } else {
            return false;
        }
        return true;
    }

    private String asked(String months, Visitor visitor) {
        Map<String, Object> model = new HashMap<>(PageFrame.of(shop, "asked", visitor));
        model.put("plans", visitor.may("GET", PageFrame.STOCK));
        try {
            PastDemand demand = BookReplies.of(() -> PastQuotes.of(shop, PastQuotes.months("months", months), signature(visitor)));
            model.put("past", PastPiece.of(demand, shop.state().catalog()));
        } catch (RefusedException wrong) {
            model.put("wrong", wrong.faults().get(0).toString());
        }
        return Pages.filled("asked.ftlh", model);
    }

    private String promises(Visitor visitor) {
        Map<String, Object> model = new HashMap<>(PageFrame.of(shop, "promises", visitor));
        model.put("applies", visitor.may("POST", BookReportHandler.APPLY));
        return Pages.filled("promises.ftlh", model);
    }

    private void draw(Request request, Response response, Callback callback) {
        AccessLine.name(request, DRAW);
        reception.serve(request, response, callback, true, (body, visit) -> {
            EventStream stream = new EventStream(response, callback, visit::end);
            Terms terms = Terms.within(LONG).until(visit::isOver).heardBy(stream::progress);
            Allocated drawn = BookReplies.of(() -> proposals.draw(signature(Visitor.of(request)), terms));
            String told = Json.of(new Told(AllocationPiece.of(drawn, shop.state().catalog()), proposals.keep(drawn)));
            visit.finish(() -> stream.answer(told));
        });
    }

    private static Signature signature(Visitor visitor) {
        String name = visitor.name().isEmpty() ? System.getProperty("user.name", "unknown") : visitor.name();
        return new Signature(name, Instant.now(), LocalDate.now());
    }
}
