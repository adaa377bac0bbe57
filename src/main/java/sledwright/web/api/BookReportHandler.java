package sledwright.web.api;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.eclipse.jetty.http.HttpMethod;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import sledwright.book.Allocated;
import sledwright.book.PastDemand;
import sledwright.book.Signature;
import sledwright.desk.Terms;
import sledwright.report.book.AllocationJson;
import sledwright.report.book.DemandJson;
import sledwright.report.book.DemandReport;
import sledwright.report.book.LostJson;
import sledwright.report.book.LostReport;
import sledwright.report.text.Screen;
import sledwright.web.door.Visitor;
import sledwright.web.http.AccessLine;
import sledwright.web.http.AnsweringHandler;
import sledwright.web.http.RefusedException;
import sledwright.web.http.Responses;
import sledwright.web.queue.Reception;
import sledwright.web.shop.OpenShop;
import sledwright.web.shop.PastQuotes;
import sledwright.web.shop.Proposals;

/** What the book says of many quotes at once: what was lost, what was asked for, and all promises drawn anew. */
public final class BookReportHandler extends AnsweringHandler {

    static final String LOST = BookHandler.PATH + "/lost";
    static final String DEMAND = BookHandler.PATH + "/demand";
    static final String ALLOCATE = BookHandler.PATH + "/allocate";
    public static final String APPLY = ALLOCATE + "/apply";

    /** Names a draw that may be applied as it was seen. */
    static final String PROPOSAL = "Sledwright-Proposal";

    private static final int SECONDS = 30;
    private static final String TEXT = "text/plain; charset=utf-8";
    private static final String CSV = "text/csv; charset=utf-8";
    private static final String XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

    /** Address -> what it can be written as, with the media types. */
    private static final Map<String, Map<String, String>> FORMATS = Map.of(LOST,
            Map.of("json", Responses.JSON, "text", TEXT, "csv", CSV, "xlsx", XLSX), DEMAND, Map.of("json", Responses.JSON, "csv", CSV));
    private static final Set<String> PATHS = Set.of(LOST, DEMAND, ALLOCATE, APPLY);

    private final OpenShop shop;
    private final Proposals proposals;
    private final Reception reception;

    public BookReportHandler(OpenShop shop, Proposals proposals, Reception reception) {
        this.shop = shop;
        this.proposals = proposals;
        this.reception = reception;
    }

    @Override
    protected boolean answers(Request request, Response response, Callback callback) {
        String path = Request.getPathInContext(request);
        if (!PATHS.contains(path)) {
            return false;
        }
        AccessLine.name(request, path);
        if (FORMATS.containsKey(path)) {
            requireMethod(request, HttpMethod.GET, HttpMethod.HEAD);
            past(path, request, response, callback);
        } else {
            requireMethod(request, HttpMethod.POST);
            allocate(path.equals(APPLY), request, response, callback);
        }
        return true;
    }

    private void past(String path, Request request, Response response, Callback callback) {
        QueryOptions options = QueryOptions.of(query(request), path.equals(LOST) ? BookKeys.LOST : BookKeys.DEMAND);
        Signature by = BookDesk.signature(options, "");
        int months = PastQuotes.months("months", options.text("months").orElse(""));
        Map<String, String> formats = FORMATS.get(path);
        String format = options.text("format").orElse("json");
        if (!formats.containsKey(format)) {
            throw RefusedException.of(400, "format", format, "must be one of "
                    + formats.keySet().stream().sorted().collect(Collectors.joining(", ")));
        }
        reception.serve(request, response, callback, false, (body, visit) -> {
            PastDemand demand = BookReplies.of(() -> PastQuotes.of(shop, months, by));
            byte[] told = path.equals(LOST) ? lost(demand, format)
                    : bytes(format.equals("csv") ? DemandReport.csv(demand) : DemandJson.of(demand));
            visit.finish(() -> Responses.bytes(200, formats.get(format), told, request, response, callback));
        });
    }

    private static byte[] lost(PastDemand demand, String format) {
        return switch (format) {
            case "xlsx" -> LostReport.xlsx(demand);
            case "csv" -> bytes(LostReport.csv(demand));
            case "text" -> bytes(LostReport.text(demand, Screen.PAGE));
            default -> bytes(LostJson.of(demand));
        };
    }

    private static byte[] bytes(String text) {
        return text.getBytes(java.nio.charset.StandardCharsets.UTF_8);
    }

    private void allocate(boolean apply, Request request, Response response, Callback callback) {
        QueryOptions options = QueryOptions.of(query(request), apply ? BookKeys.APPLY : BookKeys.ALLOCATE);
        Signature by = BookDesk.signature(options, Visitor.of(request).name());
        Terms terms = Terms.within(options.time(SECONDS)).withSeed(options.seed());
        List<String> seen = options.texts("proposal");
        reception.serve(request, response, callback, seen.isEmpty(), (body, visit) -> {
            String told = BookReplies.of(() -> {
                Allocated drawn = seen.isEmpty() ? proposals.draw(by, terms.until(visit::isOver)) : known(seen.get(0));
                if (apply) {
                    proposals.apply(drawn, by);
                } else {
                    response.getHeaders().put(PROPOSAL, proposals.keep(drawn));
                }
                return AllocationJson.of(drawn, apply);
            });
            visit.finish(() -> Responses.json(200, told, request, response, callback));
        });
    }

    private Allocated known(String name) {
        return proposals.named(name).orElseThrow(() -> RefusedException.of(409, "proposal", name,
                "is not known any more; allocate again"));
    }
}
