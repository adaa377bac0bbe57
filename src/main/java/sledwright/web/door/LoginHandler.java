package sledwright.web.door;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.eclipse.jetty.http.HttpMethod;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import sledwright.report.page.Pages;
import sledwright.report.text.Json;
import sledwright.web.http.AccessLine;
import sledwright.web.http.AnsweringHandler;
import sledwright.web.http.RefusedException;
import sledwright.web.http.Responses;
import sledwright.web.queue.Reception;
import sledwright.web.users.Secrets;
import sledwright.web.users.Session;
import sledwright.web.users.User;

/** Logging in and out, for people by a page, for programs under {@code /api/}. */
public final class LoginHandler extends AnsweringHandler {

    static final String PAGE = "/login";
    static final String API = "/api/login";
    static final String OUT = "/logout";
    static final String ME = "/api/me";

    private static final String OUT_API = "/api/logout";
    private static final String WRONG = "Name or password is wrong.";
    private static final int TOO_MANY = 429;

    /** Somebody who may come in, with the name of the session. */
    private record Admitted(String session, Visitor visitor) {
    }

    private final Entrance entrance;
    private final SessionCookie cookie;
    private final Reception reception;
    private final Supplier<String> shop;

    /**
     * @param reception reads what is sent and checks passwords, a few at a time, for each takes time and memory
     * @param shop      its name
     */
    public LoginHandler(Entrance entrance, Reception reception, Supplier<String> shop) {
        this.entrance = entrance;
        this.cookie = new SessionCookie(entrance.secure());
        this.reception = reception;
        this.shop = shop;
    }

    @Override
    protected boolean answers(Request request, Response response, Callback callback) {
        String path = Request.getPathInContext(request);
        boolean posts = HttpMethod.POST.is(request.getMethod());
        boolean reads = HttpMethod.GET.is(request.getMethod()) || HttpMethod.HEAD.is(request.getMethod());
        if (reads && path.equals(ME)) {
            AccessLine.name(request, path);
            Responses.json(200, described(Visitor.of(request)), request, response, callback);
        } else if (entrance.staff().isEmpty()) {
            return false;
        } else if (reads && path.equals(PAGE)) {
            AccessLine.name(request, path);
            page(200, "", "", request, response, callback);
        } else if (posts && path.equals(PAGE)) {
            AccessLine.name(request, path);
            byForm(request, response, callback);
        } else if (posts && path.equals(API)) {
            AccessLine.name(request, path);
            byProgram(request, response, callback);
        } else if (posts && (path.equals(OUT) || path.equals(OUT_API))) {
            AccessLine.name(request, path);
            leave(path.equals(OUT), request, response, callback);
        } else {
            return false;
        }
        return true;
    }

    private void byForm(Request request, Response response, Callback callback) {
        reception.serve(request, response, callback, false, (body, visit) -> {
            Map<String, String> form = form(body);
            try {
                Admitted in = admit(form.getOrDefault("name", ""), form.getOrDefault("password", ""), request);
                visit.finish(() -> {
                    cookie.put(in.session(), response);
                    AccessLine.by(request, in.visitor().name());
                    Responses.elsewhere(Way.of(query(request)).whereTo(in.visitor()), request, response, callback);
                });
            } catch (RefusedException refused) {
                visit.finish(() -> {
                    refused.headers().forEach((name, value) -> response.getHeaders().put(name, value));
                    String name = form.getOrDefault("name", "");
                    page(refused.status(), refused.status() == TOO_MANY ? "Too many tries; wait %s s.".formatted(
                            refused.headers().get("Retry-After")) : WRONG, User.isName(name) ? name : "", request, response, callback);
                });
            }
        });
    }

    private void byProgram(Request request, Response response, Callback callback) {
        reception.serve(request, response, callback, false, (body, visit) -> {
            Map<String, String> given = json(body);
            Admitted in = admit(given.get("name"), given.get("password"), request);
            visit.finish(() -> {
                cookie.put(in.session(), response);
                AccessLine.by(request, in.visitor().name());
                Responses.json(200, described(in.visitor()), request, response, callback);
            });
        });
    }

    /** @throws RefusedException when name or password is wrong, or was too often */
    private Admitted admit(String name, String password, Request request) {
        String address = Sender.of(request);
        String counted = User.isName(name) ? name : "";
        Optional<Duration> wait = entrance.brake().tries(counted, address);
        if (wait.isPresent()) {
            long seconds = wait.get().toMillis() / 1_000 + 1;
            throw RefusedException.of(TOO_MANY, "the login", "", "comes after too many that failed; wait %s s".formatted(seconds))
                    .with("Retry-After", String.valueOf(seconds));
        }
        User user = entrance.staff().orElseThrow().named(name, password).orElseThrow(() ->
                RefusedException.of(401, "the login", "", "has a wrong name or password").with("WWW-Authenticate",
                        "Session realm=\"sledwright\""));
        entrance.brake().succeeded(counted, address);
        String session = entrance.sessions().begin(user);
        Session begun = entrance.sessions().use(session).orElseThrow();
        return new Admitted(session, Entrance.visitor(begun));
    }

    private void leave(boolean byForm, Request request, Response response, Callback callback) {
        reception.serve(request, response, callback, false, (body, visit) -> {
            if (byForm && !Secrets.same(form(body).getOrDefault("token", ""), Visitor.of(request).token())) {
                throw RefusedException.of(403, "token", "", "is not the token of who is logged in, which comes with every page");
            }
            cookie.of(request).ifPresent(entrance.sessions()::end);
            visit.finish(() -> {
                cookie.clear(response);
                if (byForm) {
                    Responses.elsewhere(PAGE, request, response, callback);
                } else {
                    Responses.json(200, "{}\n", request, response, callback);
                }
            });
        });
    }

    private void page(int status, String fault, String name, Request request, Response response, Callback callback) {
        String page = Pages.filled("login.ftlh", Map.of("shop", shop.get(), "fault", fault, "name", name,
                "action", Way.of(query(request)).toLogin()));
        Responses.html(status, page, request, response, callback);
    }

    /** Who is logged in, and the token that changes are sent with. */
    private record Described(String name, String role, String token) {
    }

    private static String described(Visitor visitor) {
        return Json.of(new Described(visitor.name(), visitor.role().toString(), visitor.token()));
    }

    private static Map<String, String> form(byte[] body) {
        Map<String, String> form = new HashMap<>();
        try {
            for (String pair : new String(body, StandardCharsets.UTF_8).split("&")) {
                int at = pair.indexOf('=');
                if (at > 0) {
                    form.put(URLDecoder.decode(pair.substring(0, at), StandardCharsets.UTF_8),
                            URLDecoder.decode(pair.substring(at + 1), StandardCharsets.UTF_8));
                }
            }
        } catch (IllegalArgumentException garbled) {
            throw RefusedException.of(400, "the body", "", "has a % without two hexadecimal digits");
        }
        return form;
    }

    private static Map<String, String> json(byte[] body) {
        try {
            JsonNode given = new ObjectMapper().readTree(body);
            if (given != null && given.path("name").isTextual() && given.path("password").isTextual()) {
                return Map.of("name", given.get("name").textValue(), "password", given.get("password").textValue());
            }
        } catch (IOException noJson) {
            // Said below: what was sent may hold a password, so no part of it is shown.
        }
        throw RefusedException.of(400, "the body", "", "must be JSON with two texts, name and password");
    }
}
