package sledwright.web.api;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpMethod;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import sledwright.book.QuoteNumber;
import sledwright.book.SavedQuote;
import sledwright.report.book.BookJson;
import sledwright.web.door.Visitor;
import sledwright.web.http.AccessLine;
import sledwright.web.http.AnsweringHandler;
import sledwright.web.http.RefusedException;
import sledwright.web.http.Responses;
import sledwright.web.queue.Reception;
import sledwright.web.shop.OpenShop;

/** Everything under {@code /api/book}. */
public final class BookHandler extends AnsweringHandler {

    static final String PATH = "/api/book";
    private static final Map<String, String> TYPES = Map.of("json", Responses.JSON, "text", "text/plain; charset=utf-8",
            "csv", "text/csv; charset=utf-8", "html", "text/html; charset=utf-8", "pdf", "application/pdf", "svg", "image/svg+xml",
            "xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", "eml", "message/rfc822");
    private static final List<String> PAPERS = List.of("csv", "eml", "html", "json", "pdf", "text", "xlsx");
    private static final List<String> SHEETS = List.of("csv", "html", "json", "pdf", "svg", "text");
    private static final List<String> SAVED = List.of("html", "xlsx", "eml");

    private final BookDesk desk;
    private final Reception reception;

    public BookHandler(OpenShop shop, Reception reception) {
        this.desk = new BookDesk(shop);
        this.reception = reception;
    }

    @Override
    protected boolean answers(Request request, Response response, Callback callback) {
        String path = Request.getPathInContext(request);
        if (!path.equals(PATH) && !path.startsWith(PATH + "/")) {
            return false;
        }
        String[] steps = path.substring(PATH.length()).split("/", -1);
        if (steps.length == 1) {
            AccessLine.name(request, PATH);
            whole(request, response, callback);
        } else {
            QuoteNumber number = steps.length > 3 ? null : QuoteNumber.named(steps[1]).orElse(null);
            if (number == null) {
                throw RefusedException.of(404, "the address", "", "must end with the number of a quote, such as /api/book/2026-0001");
            }
            one(number, steps.length == 2 ? "" : steps[2], request, response, callback);
        }
        return true;
    }

    private void whole(Request request, Response response, Callback callback) {
        boolean saves = HttpMethod.POST.is(request.getMethod());
        requireMethod(request, HttpMethod.GET, HttpMethod.HEAD, HttpMethod.POST);
        QueryOptions options = QueryOptions.of(query(request), saves ? BookKeys.SAVE : BookKeys.LIST);
        options.today();
        if (!saves) {
            serve(request, response, callback, () -> desk.list(options));
            return;
        }
        String type = request.getHeaders().get(HttpHeader.CONTENT_TYPE);
        RequestBody.of(type, new byte[] {'{', '}'});
        reception.serve(request, response, callback, false, (body, visit) -> {
            String saved = BookReplies.of(() -> desk.save(type, body, options, Visitor.of(request).name()));
            visit.finish(() -> Responses.json(200, saved, request, response, callback));
        });
    }

    private void one(QuoteNumber number, String step, Request request, Response response, Callback callback) {
        switch (step) {
            case "" -> {
                AccessLine.name(request, PATH + "/NUMBER");
                requireMethod(request, HttpMethod.GET, HttpMethod.HEAD);
                QueryOptions options = QueryOptions.of(query(request), BookKeys.SHOW);
                String format = format(options, PAPERS);
                send(number.toString(), format, request, response, callback, () -> desk.paper(number, format, options));
            }
            case "sheet" -> {
                AccessLine.name(request, PATH + "/NUMBER/sheet");
                requireMethod(request, HttpMethod.GET, HttpMethod.HEAD);
                QueryOptions options = QueryOptions.of(query(request), BookKeys.SHEET);
                String format = format(options, SHEETS);
                send(number + "-sheet", format, request, response, callback, () -> desk.sheet(number, format, options));
            }
            case "history", "request" -> {
                AccessLine.name(request, PATH + "/NUMBER/" + step);
                requireMethod(request, HttpMethod.GET, HttpMethod.HEAD);
                QueryOptions options = QueryOptions.of(query(request), BookKeys.HISTORY);
                serve(request, response, callback,
                        () -> step.equals("history") ? desk.history(number, options) : desk.request(number, options));
            }
            default -> {
                List<OptionKey> keys = BookKeys.STEPS.get(step);
                if (keys == null) {
                    throw RefusedException.of(404, "the address", "", "ends with no step of a quote; steps are "
                            + String.join(", ", BookKeys.STEPS.keySet()));
                }
                AccessLine.name(request, PATH + "/NUMBER/" + step);
                requireMethod(request, HttpMethod.POST);
                QueryOptions options = QueryOptions.of(query(request), keys);
                Visitor visitor = Visitor.of(request);
                boolean sees = visitor.may("GET", PATH + "/" + number);
                serve(request, response, callback, () -> {
                    SavedQuote quote = desk.step(number, step, options, visitor.name());
                    return sees ? BookJson.of(quote) : BookJson.state(quote);
                });
            }
        }
    }

    private static String format(QueryOptions options, List<String> known) {
        String format = options.text("format").orElse("json");
        if (!known.contains(format)) {
            throw RefusedException.of(400, "format", format, "must be one of " + String.join(", ", known));
        }
        return format;
    }

    private void send(String name, String format, Request request, Response response, Callback callback, Supplier<byte[]> made) {
        reception.serve(request, response, callback, false, (body, visit) -> {
            byte[] paper = BookReplies.of(made);
            visit.finish(() -> {
                if (SAVED.contains(format)) {
                    // A page of its own has its own style, which the pages of this server may not have.
                    response.getHeaders().put(HttpHeader.CONTENT_DISPOSITION, "attachment; filename=\"%s.%s\"".formatted(name, format));
                }
                Responses.bytes(200, TYPES.get(format), paper, request, response, callback);
            });
        });
    }

    private void serve(Request request, Response response, Callback callback, Supplier<String> answer) {
        reception.serve(request, response, callback, false, (body, visit) -> {
            byte[] json = BookReplies.of(answer).getBytes(StandardCharsets.UTF_8);
            visit.finish(() -> Responses.bytes(200, Responses.JSON, json, request, response, callback));
        });
    }
}
