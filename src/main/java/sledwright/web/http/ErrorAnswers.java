package sledwright.web.http;

import java.util.Map;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/** What the server itself refuses, in the form of every refusal; nothing of the program's inside is shown. */
public final class ErrorAnswers implements Request.Handler {

    private static final Map<Integer, String> WORDS = Map.of(
            400, "is not a request as HTTP has it",
            404, "is nothing that is answered here",
            414, "has a longer address than is read",
            426, "is of a version of HTTP that is not spoken here; it must be HTTP/1.1",
            431, "has more header lines than are read",
            505, "is of a version of HTTP that is not spoken here");

    @Override
    public boolean handle(Request request, Response response, Callback callback) {
        int status = response.getStatus();
        String words = WORDS.getOrDefault(status, "could not be answered: this is a defect of the program");
        SafetyHeaders.put(response);
        Responses.refusal(RefusedException.of(status, "the request", "", words), request, response, callback);
        return true;
    }
}
