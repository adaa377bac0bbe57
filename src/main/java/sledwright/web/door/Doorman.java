package sledwright.web.door;

import java.util.Optional;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import sledwright.web.http.AccessLine;
import sledwright.web.http.RefusedException;
import sledwright.web.http.Responses;
import sledwright.web.users.Secrets;

/** Lets through who may do what is asked for, and knows them from then on. */
public final class Doorman extends Handler.Wrapper {

    /** The header that brings a visitor's token back with a change. */
    public static final String TOKEN = "Sledwright-Token";

    private final Entrance entrance;
    private final SessionCookie cookie;

    public Doorman(Entrance entrance, Handler next) {
        super(next);
        this.entrance = entrance;
        this.cookie = new SessionCookie(entrance.secure());
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        String path = Request.getPathInContext(request);
        Rights.Right right = Rights.of(request.getMethod(), path);
        Optional<Visitor> visitor = entrance.visitor(cookie.of(request));
        visitor.ifPresent(known -> {
            known.enters(request);
            AccessLine.by(request, known.name());
        });
        if (!right.isOpen() && visitor.isEmpty() && Responses.isForAPerson(request)) {
            Responses.elsewhere(Way.from(request).toLogin(), request, response, callback);
            return true;
        }
        try {
            if (!right.isOpen()) {
                require(right, visitor, request, path);
            }
        } catch (RefusedException refused) {
            Responses.refusal(refused, request, response, callback);
            return true;
        }
        return super.handle(request, response, callback);
    }

    private void require(Rights.Right right, Optional<Visitor> visitor, Request request, String path) {
        Visitor known = visitor.orElseThrow(() -> RefusedException.of(401, "the request", "",
                "comes from nobody who is logged in; log in at %s, or by POST to %s".formatted(LoginHandler.PAGE, LoginHandler.API))
                .with("WWW-Authenticate", "Session realm=\"sledwright\""));
        if (!right.allows(known.role())) {
            throw RefusedException.of(403, "the request", "", "is not for the role %s; it is for %s".formatted(known.role(),
                    String.join(", ", right.roles().stream().map(Object::toString).toList())));
        }
        if (right.changes() && !path.equals(LoginHandler.OUT) && !isMeant(known, request)) {
            throw RefusedException.of(403, TOKEN, "", "is not the token of who is logged in, which comes with every page, with the answer"
                    + " to %s and from GET %s; a change needs it".formatted(LoginHandler.API, LoginHandler.ME));
        }
    }

    /** A program that no user is needed for, on this very machine, needs no token either: no page of another site can be behind it. */
    private boolean isMeant(Visitor known, Request request) {
        String given = request.getHeaders().get(TOKEN);
        boolean ofBrowser = request.getHeaders().contains(HttpHeader.ORIGIN) || request.getHeaders().contains("Sec-Fetch-Site");
        return given == null ? entrance.staff().isEmpty() && !ofBrowser : Secrets.same(given, known.token());
    }
}
