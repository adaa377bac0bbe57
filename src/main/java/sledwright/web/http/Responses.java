package sledwright.web.http;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.regex.Pattern;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpMethod;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import sledwright.input.Fault;
import sledwright.report.page.Pages;
import sledwright.report.text.FaultsJson;

/** Whole answers. */
public final class Responses {

    public static final String JSON = "application/json";
    public static final String HTML = "text/html; charset=utf-8";

    /** What begins like this is said of a place; all else is a sentence of its own. */
    private static final Pattern SAID_OF_A_PLACE = Pattern.compile(
            "(is|are|was|has|must|can|cannot|could|did|comes|names|leads|stands|ends|changes) ");

    private Responses() {
    }

    public static void json(int status, String text, Request request, Response response, Callback callback) {
        bytes(status, JSON, text.getBytes(StandardCharsets.UTF_8), request, response, callback);
    }

    public static void html(int status, String page, Request request, Response response, Callback callback) {
        bytes(status, HTML, page.getBytes(StandardCharsets.UTF_8), request, response, callback);
    }

    public static void bytes(int status, String type, byte[] body, Request request, Response response, Callback callback) {
        response.setStatus(status);
        response.getHeaders().put(HttpHeader.CONTENT_TYPE, type);
        response.getHeaders().put(HttpHeader.CONTENT_LENGTH, body.length);
        boolean withBody = !HttpMethod.HEAD.is(request.getMethod());
        response.write(true, withBody ? ByteBuffer.wrap(body) : ByteBuffer.allocate(0), callback);
    }

    /** Sends whoever asked to look at another address of this server. */
    public static void elsewhere(String path, Request request, Response response, Callback callback) {
        response.setStatus(303);
        response.getHeaders().put(HttpHeader.LOCATION, path);
        response.getHeaders().put(HttpHeader.CONTENT_LENGTH, 0);
        response.write(true, ByteBuffer.allocate(0), callback);
    }

    /** Says why a request is not answered. */
    public static void refusal(RefusedException refused, Request request, Response response, Callback callback) {
        if (response.isCommitted()) {
            callback.failed(refused);
            return;
        }
        refused.headers().forEach((name, value) -> response.getHeaders().put(name, value));
        // What is left of the body is not read, so nothing else can come over this connection.
        if (request.getLength() != 0) {
            response.getHeaders().put(HttpHeader.CONNECTION, "close");
        }
        if (isForAPerson(request)) {
            String page = Pages.filled("refused.ftlh", Map.of("status", String.valueOf(refused.status()),
                    "faults", refused.faults().stream().map(Responses::sentence).toList()));
            html(refused.status(), page, request, response, callback);
        } else {
            json(refused.status(), FaultsJson.of(refused.faults()), request, response, callback);
        }
    }

    /**
     * Whether somebody opens an address in a browser; its scripts and other programs take what programs read. Browsers say of a link that
     * is followed that a document is wanted (W3C, Fetch Metadata Request Headers).
     */
    public static boolean isForAPerson(Request request) {
        String path = request.getHttpURI() == null ? null : request.getHttpURI().getPath();
        return HttpMethod.GET.is(request.getMethod()) && request.getHeaders().contains(HttpHeader.ACCEPT, "text/html") && path != null
                && ("document".equals(request.getHeaders().get("Sec-Fetch-Dest"))
                || !path.startsWith("/api/") && !path.startsWith("/page/"));
    }

    private static String sentence(Fault fault) {
        if (!SAID_OF_A_PLACE.matcher(fault.message()).lookingAt()) {
            return fault.message();
        }
        return fault.file() + (fault.value().isEmpty() ? " " : " \"" + fault.value() + "\" ") + fault.message();
    }
}
