package sledwright.web.door;

import static org.assertj.core.api.Assertions.assertThat;

import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.book.store.BookPlace;
import sledwright.samples.Folders;
import sledwright.web.Servers;
import sledwright.web.WebServer;
import sledwright.web.WebSettings;
import sledwright.web.Wire;
import sledwright.web.shop.BookShelf;
import sledwright.web.users.Role;
import sledwright.web.users.User;
import sledwright.web.users.UsersFile;

/** Asked as a server with TLS before it asks: by the name that browsers know, with the address of who asked it. */
class BehindTlsTest {

    private static final String JSON = "application/json";
    private static final String LOGIN = "{\"name\": \"anna\", \"password\": \"a password of anna\"}";
    private static final List<String> LOG = new CopyOnWriteArrayList<>();

    @TempDir
    private static Path folder;
    private static WebServer server;

    @BeforeAll
    static void start() throws IOException {
        UsersFile users = new UsersFile(folder.resolve("users.csv"));
        String hash = Password.hash("a password of anna").addRandomSalt(16).with(Argon2Function.getInstance(1_024, 1, 1, 32, Argon2.ID)).getResult();
        users.write(Map.of("anna", new User("anna", Role.OWNER, hash)));
        WebSettings.Place place = new WebSettings.Place("127.0.0.1", 0, Optional.of(URI.create("https://Offers.example.org")));
        server = WebServer.start(new WebSettings(Folders.SHOP, new BookShelf(BookPlace.of(folder.resolve("book.db")), "test"), place, Optional.of(users.path()), Servers.ROOMY, LOG::add,
                defect -> LOG.add("defect: " + defect)));
    }

    @AfterAll
    static void stop() {
        server.close();
        assertThat(LOG).isNotEmpty().noneMatch(line -> line.startsWith("defect"));
    }

    private static Wire.Reply post(String path, String body, String... headers) {
        String more = headers.length == 0 ? "" : String.join("\r\n", headers) + "\r\n";
        return Wire.say(server.address(), "POST %s HTTP/1.1\r\nHost: offers.example.org\r\nConnection: close\r\nContent-Type: %s\r\nContent-Length: %s\r\n%s\r\n%s"
                .formatted(path, JSON, body.length(), more, body));
    }

    @Test
    void itIsCalledByTheNameThatBrowsersKnowAndItsCookieGoesByTlsAlone() {
        Wire.Reply reply = post("/api/login", LOGIN, "Origin: https://offers.example.org", "X-Forwarded-For: 192.0.2.7");
        assertThat(reply.status()).as(reply.body()).isEqualTo(200);
        assertThat(reply.head()).containsPattern("Set-Cookie: __Host-sledwright=[^;]+; Path=/; [^\r]*Secure; HttpOnly; SameSite=Strict");
        assertThat(Wire.get(server.address(), "/", "Accept: text/html").head()).contains("303", "Location: /login");
    }

    @Test
    void aPageThatCameByAnOpenLineMayNotAsk() {
        Wire.Reply reply = post("/api/login", LOGIN, "Origin: http://offers.example.org");
        assertThat(reply.status()).isEqualTo(403);
        assertThat(reply.body()).contains("\"value\": \"http://offers.example.org\"", "is another site, whose pages may not ask here");
        assertThat(post("/api/login", LOGIN, "Origin: https://offers.example.org:8443").status()).isEqualTo(403);
    }
}
