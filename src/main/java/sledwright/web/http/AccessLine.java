package sledwright.web.http;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.RequestLog;
import org.eclipse.jetty.server.Response;

/**
 * A line for each request that says what was asked, how it went and who of the shop asked, but nothing of what a customer wants: no query,
 * no body, no other names.
 */
public final class AccessLine implements RequestLog {

    private static final String WHAT = AccessLine.class.getName();
    private static final String WHO = WHAT + ".who";
    private static final String ELSE = "other";

    private final Consumer<String> log;

    public AccessLine(Consumer<String> log) {
        this.log = log;
    }

    /** What the line calls the request; one that nobody names is called {@code other}, since its address may hold anything. */
    public static void name(Request request, String what) {
        request.setAttribute(WHAT, what);
    }

    /** Who of the shop asked; empty: nobody knows. */
    public static void by(Request request, String who) {
        request.setAttribute(WHO, who);
    }

    @Override
    public void log(Request request, Response response) {
        Object what = request.getAttribute(WHAT);
        long millis = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - request.getBeginNanoTime());
        Object who = request.getAttribute(WHO);
        log.accept("%s %s %s %s %s ms %s B%s".formatted(Instant.now().truncatedTo(ChronoUnit.MILLIS), method(request),
                what == null ? ELSE : what, response.getStatus(), millis, Response.getContentBytesWritten(response),
                who == null || who.equals("") ? "" : " " + who));
    }

    private static String method(Request request) {
        String method = request.getMethod();
        return method != null && method.matches("[A-Z]{1,10}") ? method : ELSE;
    }
}
