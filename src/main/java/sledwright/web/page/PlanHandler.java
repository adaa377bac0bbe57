package sledwright.web.page;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpMethod;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.Fields;
import sledwright.book.PastDemand;
import sledwright.book.Signature;
import sledwright.desk.RestockQuestion;
import sledwright.desk.Terms;
import sledwright.input.Faults;
import sledwright.input.Grid;
import sledwright.input.GridReader;
import sledwright.input.Source;
import sledwright.report.book.DemandYaml;
import sledwright.report.restock.RestockPiece;
import sledwright.report.text.Json;
import sledwright.web.api.BookReplies;
import sledwright.web.api.DeskReplies;
import sledwright.web.api.EventStream;
import sledwright.web.api.RequestBody;
import sledwright.web.door.Visitor;
import sledwright.web.http.AccessLine;
import sledwright.web.http.AnsweringHandler;
import sledwright.web.http.RefusedException;
import sledwright.web.http.Responses;
import sledwright.web.queue.Reception;
import sledwright.web.shop.OpenShop;
import sledwright.web.shop.PastQuotes;

/** What to stock: a plan written from what the book knows was asked for, and a plan answered, with how far it has come. */
public final class PlanHandler extends AnsweringHandler {

    static final String WRITE = "/page/demand";
    static final String PLAN = "/page/plan";
    private static final Duration LONG = Duration.ofMinutes(5);

    private static final String DECIMAL_COMMA = "[0-9]+,[0-9]+";

    private record Told(String html) {
    }

    private final OpenShop shop;
    private final Reception reception;

    public PlanHandler(OpenShop shop, Reception reception) {
        this.shop = shop;
        this.reception = reception;
    }

    @Override
    protected boolean answers(Request request, Response response, Callback callback) {
        String path = Request.getPathInContext(request);
        if (!HttpMethod.POST.is(request.getMethod()) || !List.of(WRITE, PLAN).contains(path)) {
            return false;
        }
        AccessLine.name(request, path);
        if (path.equals(WRITE)) {
            write(request, response, callback);
        } else {
            plan(request, response, callback);
        }
        return true;
    }

    private void write(Request request, Response response, Callback callback) {
        Fields query = query(request);
        int months = months("months", query);
        int horizon = months("horizon", query);
        String budget = one("budget", query);
        String name = one("name", query).replaceAll("[\\\\/]", "_");
        reception.serve(request, response, callback, false, (body, visit) -> {
            List<Map<String, String>> supply = rows(Source.of(name.isEmpty() ? "supply.csv" : name, body));
            String who = Visitor.of(request).name();
            PastDemand demand = BookReplies.of(() -> PastQuotes.of(shop, months, new Signature(who, Instant.now(), LocalDate.now())));
            if (!demand.isPlanned()) {
                throw RefusedException.of(400, "months", String.valueOf(months), DemandYaml.NOTHING);
            }
            String plan = DemandYaml.of(demand, supply, horizon, Optional.of(budget).filter(text -> !text.isBlank()));
            visit.finish(() -> Responses.bytes(200, "text/plain; charset=utf-8", plan.getBytes(StandardCharsets.UTF_8), request, response,
                    callback));
        });
    }

    private static int months(String key, Fields query) {
        return PastQuotes.months(key, one(key, query));
    }

    private static String one(String key, Fields query) {
        return query.getValuesOrEmpty(key).stream().findFirst().orElse("");
    }

    /** What suppliers offer, by the headings of their table; what a heading or a cell means is asked where the plan is read. */
    private static List<Map<String, String>> rows(Source table) {
        Faults faults = new Faults();
        Optional<Grid> grid = GridReader.read(table, Optional.empty(), Optional.empty(), faults);
        if (grid.isEmpty() || faults.size() > 0) {
            throw RefusedException.of(faults.all());
        }
        List<Map<String, String>> rows = new ArrayList<>();
        List<Grid.Row> lines = grid.get().rows();
        for (Grid.Row line : lines.subList(Math.min(1, lines.size()), lines.size())) {
            Map<String, String> row = new LinkedHashMap<>();
            for (int column = 0; column < line.cells().size(); column++) {
                if (line.cell(column).kind() != Grid.Kind.EMPTY) {
                    String text = line.cell(column).text();
                    boolean commas = grid.get().decimalComma() && text.matches(DECIMAL_COMMA);
                    row.put(lines.get(0).cell(column).text(), commas ? text.replace(',', '.') : text);
                }
            }
            rows.add(row);
        }
        return rows;
    }

    private void plan(Request request, Response response, Callback callback) {
        String type = request.getHeaders().get(HttpHeader.CONTENT_TYPE);
        reception.serve(request, response, callback, true, (body, visit) -> {
            EventStream stream = new EventStream(response, callback, visit::end);
            Terms terms = Terms.within(LONG).until(visit::isOver).heardBy(stream::progress);
            String told = Json.of(new Told(DeskReplies.of(shop.state().desk().restock(RequestBody.of(type, body),
                    new RestockQuestion(List.of(), true), terms).map(RestockPiece::of))));
            visit.finish(() -> stream.answer(told));
        });
    }
}
