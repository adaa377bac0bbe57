package sledwright.web.http;

import java.util.Arrays;
import java.util.List;
import org.eclipse.jetty.http.HttpMethod;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.Fields;

/** Answers some addresses; what is refused there is answered with why. */
public abstract class AnsweringHandler extends Handler.Abstract.NonBlocking {

    @Override
    public final boolean handle(Request request, Response response, Callback callback) {
        try {
            return answers(request, response, callback);
        } catch (RefusedException refused) {
            Responses.refusal(refused, request, response, callback);
            return true;
        }
    }

    /**
     * @return whether the address is one of this handler's
     * @throws RefusedException when it is, but not like this
     */
    protected abstract boolean answers(Request request, Response response, Callback callback);

    /** @throws RefusedException when the address is asked with none of these methods */
    protected static void requireMethod(Request request, HttpMethod... methods) {
        List<String> allowed = Arrays.stream(methods).map(HttpMethod::asString).toList();
        if (!allowed.contains(request.getMethod())) {
            String right = String.join(" or ", allowed);
            throw RefusedException.of(405, "the method", request.getMethod(), "is not taken here; it must be " + right)
                    .with("Allow", String.join(", ", allowed));
        }
    }

    /** What stands behind the question mark of the address. */
    protected static Fields query(Request request) {
        try {
            return Request.extractQueryParameters(request);
        } catch (IllegalArgumentException garbled) {
            throw RefusedException.of(400, "the address", "", "has letters that are not UTF-8, or a % without two hexadecimal digits");
        }
    }
}
