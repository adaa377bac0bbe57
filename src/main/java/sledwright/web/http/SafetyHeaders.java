package sledwright.web.http;

import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.server.Response;

/** What every answer forbids the browser to do with it. */
final class SafetyHeaders {

    /** Everything comes from this server; no script or style stands in a page, and no text becomes a script. */
    static final String POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self';"
            + " connect-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    private SafetyHeaders() {
    }

    static void put(Response response) {
        HttpFields.Mutable headers = response.getHeaders();
        headers.put("Content-Security-Policy", POLICY);
        headers.put("X-Content-Type-Options", "nosniff");
        headers.put("X-Frame-Options", "DENY");
        // With no-referrer browsers would call the origin of the server's own forms null.
        headers.put("Referrer-Policy", "same-origin");
        headers.put("Cross-Origin-Opener-Policy", "same-origin");
        headers.put("Cross-Origin-Resource-Policy", "same-origin");
        headers.put("Cache-Control", "no-store");
    }
}
