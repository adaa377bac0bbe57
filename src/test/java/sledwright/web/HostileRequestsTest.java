package sledwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.samples.Folders;
import sledwright.web.door.Rights;
import sledwright.web.users.Role;
import sledwright.web.users.User;
import sledwright.web.users.UsersFile;

/** Addresses, keys, headers and bodies by chance, sent to every address that somebody has a right to and to all that is described, with a login and without: each gets a status, and none is a defect. */
class HostileRequestsTest {

    private static final int CASES = 400;
    private static final List<String> LINKS = List.of("/for/" + "A".repeat(43), "/for/x/answer");
    private static final List<String> VALUES = List.of("", "1", "-1", "1e99", "NaN", "%00", "%ff", "%zz", "true", "2026-11-18", "2026-13-45", "require.cores=8", "require.cores=1..9",
            "..%2f..%2fetc", "%3Cscript%3E", "x".repeat(900), "customer", "&", "=", "%F0%9F%98%80");
    private static final List<String> TYPES = List.of("application/yaml", "application/json", "application/x-www-form-urlencoded", "text/plain", "", "multipart/form-data; boundary=x");
    private static final List<String> METHODS = List.of("POST", "POST", "POST", "GET", "GET", "PUT", "DELETE", "PATCH", "HEAD", "OPTIONS", "TRACE");

    @TempDir
    private static Path folder;

    private static String body(Random chance) {
        return switch (chance.nextInt(6)) {
            case 0 -> "kind: quote\nrequire: { cores: 8 }\n";
            case 1 -> "{\"kind\": \"quote\", \"require\": {\"cores\": " + chance.nextInt() + "}}";
            case 2 -> "a: &a [*a]\n";
            case 3 -> "[".repeat(1 + chance.nextInt(400));
            case 4 -> "";
            default -> {
                byte[] bytes = new byte[chance.nextInt(300)];
                chance.nextBytes(bytes);
                yield new String(bytes, StandardCharsets.ISO_8859_1);
            }
        };
    }

    private static <T> T one(List<T> all, Random chance) {
        return all.get(chance.nextInt(all.size()));
    }

    private static String request(String path, List<String> keys, String pass, URI address, Random chance) {
        StringBuilder query = new StringBuilder();
        for (int i = chance.nextInt(4); i > 0; i--) {
            query.append(query.length() == 0 ? "?" : "&").append(one(keys, chance)).append('=').append(one(VALUES, chance));
        }
        String body = body(chance);
        return "%s %s%s HTTP/1.1\r\nHost: %s\r\nConnection: close\r\n%s%sContent-Type: %s\r\nContent-Length: %s\r\n\r\n%s".formatted(one(METHODS, chance), path, query, address.getAuthority(),
                chance.nextInt(4) == 0 ? "" : pass, chance.nextInt(5) == 0 ? "Sledwright-Line: \u0001\u00ff" + "y".repeat(80) + "\r\n" : "", one(TYPES, chance),
                body.getBytes(StandardCharsets.UTF_8).length, body);
    }

    @Test
    void nothingThatIsSentIsADefect() throws IOException {
        List<String> log = new CopyOnWriteArrayList<>();
        UsersFile users = new UsersFile(folder.resolve("users.csv"));
        String hash = Password.hash("a password of anna").addRandomSalt(16).with(Argon2Function.getInstance(1_024, 1, 1, 32, Argon2.ID)).getResult();
        users.write(Map.of("anna", new User("anna", Role.OWNER, hash)));
        Path shop = Folders.copy(Folders.SHOP, folder.resolve("shop"));
        try (WebServer server = Servers.start(shop, folder.resolve("book.db"), Optional.of(users.path()), Servers.ROOMY, log)) {
            URI address = server.address();
            Wire.Reply login = Wire.post(address, "/api/login", "application/json", "{\"name\": \"anna\", \"password\": \"a password of anna\"}");
            String pass = "Cookie: %s\r\nSledwright-Token: %s\r\n".formatted(login.head().replaceAll("(?s).*Set-Cookie: (sledwright=[^;]*);.*", "$1"),
                    new ObjectMapper().readTree(login.body()).get("token").textValue());
            List<String> paths = new ArrayList<>(LINKS);
            Rights.TABLE.stream().map(Rights.Right::path).filter(path -> !path.equals("/api/logout"))
                    .map(path -> path.replace("/**", "/ask.js").replace("*", "2026-0001")).distinct().forEach(paths::add);
            assertThat(paths).contains("/page/chart", "/page/plan", "/stock", "/assets/ask.js");
            List<String> keys = new ArrayList<>(List.of("x", "%00", "rank", "figure"));
            new ObjectMapper().readTree(Wire.get(Servers.small().address(), "/api/openapi.json").body()).get("paths").fields().forEachRemaining(path -> {
                if (!path.getKey().equals("/api/logout")) {
                    paths.add(path.getKey().replace("{number}", "2026-0001").replace("{step}", "send").replace("{id}", "AAAAAAAAAAAA"));
                }
                path.getValue().findValuesAsText("name").forEach(keys::add);
            });
            int answered = 0;
            for (int seed = 0; seed < CASES; seed++) {
                Random chance = new Random(seed);
                String sent = request(one(paths, chance), keys, pass, address, chance);
                Wire.Reply reply = Wire.say(address, sent);
                assertThat(reply.status()).as("seed %s\n%s\n%s", seed, sent, reply.body()).isIn(200, 303, 400, 401, 403, 404, 405, 409, 413, 415, 429);
                assertThat(reply.body()).as("seed " + seed).doesNotContain("Exception", "\tat ", "jetty", "sledwright.web");
                answered += reply.status() == 200 ? 1 : 0;
            }
            assertThat(answered).isGreaterThan(10);
            assertThat(Wire.get(address, "/api/health").status()).isEqualTo(200);
        }
        assertThat(log).noneMatch(line -> line.startsWith("defect"));
    }
}
