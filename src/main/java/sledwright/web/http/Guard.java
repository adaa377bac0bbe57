package sledwright.web.http;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/**
 * Who may ask at all. A page of another site can make a browser send requests here: by a name of its own that it points at this machine,
 * which the name in {@code Host} gives away, or across sites, which {@code Origin} and {@code Sec-Fetch-Site} do.
 */
public final class Guard extends Handler.Wrapper {

    private static final Set<String> OWN_PAGES = Set.of("same-origin", "none");
    private static final Set<String> READING = Set.of("GET", "HEAD");

    private final Set<String> hosts;
    private final Optional<String> byTls;

    /**
     * @param hosts the names by which this server may be called, without ports
     * @param byTls the one of them that browsers reach by TLS alone
     */
    public Guard(Set<String> hosts, Optional<String> byTls, Handler next) {
        super(next);
        this.hosts = Set.copyOf(hosts);
        this.byTls = byTls;
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        SafetyHeaders.put(response);
        try {
            require(request);
        } catch (RefusedException refused) {
            Responses.refusal(refused, request, response, callback);
            return true;
        }
        return super.handle(request, response, callback);
    }

    private void require(Request request) {
        String host = request.getHttpURI().getHost();
        if (host == null || !hosts.contains(host.toLowerCase(Locale.ROOT))) {
            throw RefusedException.of(403, "Host", host == null ? "" : host, "is not a name of this server; it is called "
                    + String.join(", ", hosts.stream().sorted().toList()));
        }
        String origin = request.getHeaders().get(HttpHeader.ORIGIN);
        if (origin != null && !isOwn(origin, request)) {
            throw RefusedException.of(403, "Origin", origin, "is another site, whose pages may not ask here");
        }
        String site = request.getHeaders().get("Sec-Fetch-Site");
        if (site != null && !OWN_PAGES.contains(site) && !READING.contains(request.getMethod())) {
            throw RefusedException.of(403, "Sec-Fetch-Site", site, "is a page of another site, which may not ask here");
        }
    }

    /** Whether the page that asks came from the very name and port that it asks, and not by an open line where TLS is promised. */
    private boolean isOwn(String origin, Request request) {
        String asked = request.getHeaders().get(HttpHeader.HOST);
        boolean open = byTls.filter(name -> name.equalsIgnoreCase(request.getHttpURI().getHost())).isEmpty();
        return asked != null && (origin.equalsIgnoreCase("https://" + asked) || open && origin.equalsIgnoreCase("http://" + asked));
    }
}
