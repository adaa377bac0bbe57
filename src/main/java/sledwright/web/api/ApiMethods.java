package sledwright.web.api;

import org.eclipse.jetty.http.HttpMethod;
import org.eclipse.jetty.server.Request;
import sledwright.web.http.AnsweringHandler;
import sledwright.web.http.RefusedException;

/** Answers addresses, each of which takes some methods. */
abstract class ApiMethods extends AnsweringHandler {

    static void requireMethod(Request request, String allowed, HttpMethod... methods) {
        for (HttpMethod method : methods) {
            if (method.is(request.getMethod())) {
                return;
            }
        }
        throw RefusedException.of(405, "the method", request.getMethod(), "is not taken here; it must be " + allowed)
                .with("Allow", allowed);
    }
}
