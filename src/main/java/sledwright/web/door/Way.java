package sledwright.web.door;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.util.Fields;

/**
 * Where somebody was on the way to who has to log in first.
 *
 * @param to an address of this very server, with its query; empty where somebody goes wherever their role begins
 */
record Way(String to) {

    private static final String KEY = "to";
    /** No address that begins so is one of another server. */
    private static final Pattern OWN = Pattern.compile("/[A-Za-z0-9][A-Za-z0-9._~/?=&%+,:-]*");

    Way {
        to = OWN.matcher(to).matches() && !to.startsWith(LoginHandler.PAGE) ? to : "";
    }

    /** What is asked for by somebody who is not logged in. */
    static Way from(Request request) {
        return new Way(request.getHttpURI().getPathQuery());
    }

    /** What the address of the login says. */
    static Way of(Fields query) {
        return new Way(query.getValuesOrEmpty(KEY).stream().findFirst().orElse(""));
    }

    /** The address of the login that leads there. */
    String toLogin() {
        return LoginHandler.PAGE + (to.isEmpty() ? "" : "?" + KEY + "=" + URLEncoder.encode(to, StandardCharsets.UTF_8));
    }

    String whereTo(Visitor visitor) {
        boolean may = !to.isEmpty() && visitor.may("GET", to.replaceFirst("\\?.*", ""));
        return may ? to : visitor.may("GET", "/") ? "/" : "/work";
    }
}
