package sledwright.web.door;

import java.util.Optional;
import org.eclipse.jetty.http.HttpCookie;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import sledwright.web.users.Sessions;

/** The cookie that holds the name of a session: no script reads it, and no page of another site sends it along. */
final class SessionCookie {

    private static final int LONGEST = 100;

    private final String name;
    private final boolean secure;

    SessionCookie(boolean secure) {
        this.secure = secure;
        // Browsers take a name with this beginning by TLS alone, and from no other host (RFC 6265bis, section 4.1.3).
        name = secure ? "__Host-sledwright" : "sledwright";
    }

    Optional<String> of(Request request) {
        return Request.getCookies(request).stream().filter(one -> one.getName().equals(name)).map(HttpCookie::getValue)
                .filter(value -> value != null && value.length() <= LONGEST).findFirst();
    }

    void put(String session, Response response) {
        Response.putCookie(response, cookie(session, Sessions.LONGEST.toSeconds()));
    }

    void clear(Response response) {
        Response.putCookie(response, cookie("", 0));
    }

    private HttpCookie cookie(String value, long seconds) {
        return HttpCookie.build(name, value).path("/").httpOnly(true).secure(secure).sameSite(HttpCookie.SameSite.STRICT).maxAge(seconds)
                .build();
    }
}
