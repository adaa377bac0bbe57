package sledwright.web.door;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import sledwright.browser.Browser;
import sledwright.browser.InBrowser;
import sledwright.browser.ViewChecks;
import sledwright.samples.Folders;
import sledwright.web.Servers;
import sledwright.web.WebServer;
import sledwright.web.Wire;
import sledwright.web.page.PageHandler;
import sledwright.web.users.Role;
import sledwright.web.users.User;
import sledwright.web.users.UsersFile;

/** Logging in and out over HTTP and in a browser; what each role may do. */
@InBrowser
class LoginTest {

    private static final String JSON = "application/json";
    private static final String FORM = "application/x-www-form-urlencoded";
    private static final String QUOTE = "{\"kind\": \"quote\", \"require\": {\"cores\": 8, \"memory_gb\": 32}}";
    private static final List<String> LOG = new CopyOnWriteArrayList<>();

    @TempDir
    private static Path folder;
    private static UsersFile users;
    private static WebServer server;
    private static URI address;

    /** What a program that has logged in sends along. */
    private record Pass(String cookie, String token) {

        String[] headers() {
            return new String[] {"Cookie: " + cookie, "Sledwright-Token: " + token};
        }
    }

    @BeforeAll
    static void start() {
        users = new UsersFile(folder.resolve("users.csv"));
        Map<String, User> all = new LinkedHashMap<>();
        for (Role role : Role.values()) {
            all.put(role.toString(), new User(role.toString(), role, cheap(password(role))));
        }
        users.write(all);
        server = Servers.start(Folders.SHOP, Optional.of(users.path()), Servers.ROOMY, LOG);
        address = server.address();
    }

    @AfterAll
    static void stop() {
        server.close();
        assertThat(LOG).noneMatch(line -> line.startsWith("defect") || line.contains("password of"));
    }

    /** One that takes a test no time. */
    private static String cheap(String password) {
        return Password.hash(password).addRandomSalt(16).with(Argon2Function.getInstance(1_024, 1, 1, 32, Argon2.ID)).getResult();
    }

    private static String password(Role role) {
        return "the password of & for " + role;
    }

    /** A line is written when its answer is already on its way. */
    private static void assertLogged(String line) {
        long end = System.nanoTime() + Duration.ofSeconds(5).toNanos();
        while (LOG.stream().noneMatch(one -> one.matches(line)) && System.nanoTime() < end) {
            Thread.onSpinWait();
        }
        assertThat(LOG).anyMatch(one -> one.matches(line));
    }

    private static Wire.Reply login(String name, String password, String... headers) {
        return Wire.post(address, "/api/login", JSON, "{\"name\": \"%s\", \"password\": \"%s\"}".formatted(name, password), headers);
    }

    private static Pass pass(Role role) {
        Wire.Reply reply = login(role.toString(), password(role));
        assertThat(reply.status()).as(reply.body()).isEqualTo(200);
        Matcher cookie = Pattern.compile("Set-Cookie: (sledwright=[A-Za-z0-9_-]{43}); Path=/; Max-Age=43200; HttpOnly; SameSite=Strict").matcher(reply.head().replaceAll("; Expires=[^;]*", ""));
        assertThat(cookie.find()).as(reply.head()).isTrue();
        try {
            return new Pass(cookie.group(1), new ObjectMapper().readTree(reply.body()).get("token").textValue());
        } catch (IOException noJson) {
            throw new AssertionError(reply.body(), noJson);
        }
    }

    private static String sent(String method, String path, String... headers) {
        String more = headers.length == 0 ? "" : String.join("\r\n", headers) + "\r\n";
        return "%s %s HTTP/1.1\r\nHost: %s\r\nConnection: close\r\n%sContent-Type: application/json\r\nContent-Length: 2\r\n\r\n{}"
                .formatted(method, path, address.getAuthority(), more);
    }

    /** Every address of the table, and some that stand nowhere in it. */
    private static List<String[]> everything() {
        List<String[]> all = new ArrayList<>();
        for (Rights.Right right : Rights.TABLE) {
            String path = right.path().replace("/**", "/ask.css").replace("*", "2026-0001");
            switch (right.kind()) {
                case READS -> all.add(new String[] {"GET", path});
                case ASKS, CHANGES -> all.add(new String[] {"POST", path});
                case OPEN -> {
                    all.add(new String[] {"GET", path});
                    all.add(new String[] {"POST", path});
                }
            }
        }
        all.add(new String[] {"GET", "/api/nothing"});
        all.add(new String[] {"POST", "/api/nothing"});
        all.add(new String[] {"DELETE", "/api/quote"});
        return all;
    }

    /** A row of the table in the document for each address. */
    @Test
    void theTableStandsInTheDocument() throws IOException {
        List<String> rows = Rights.TABLE.stream().filter(right -> !right.isOpen()).map(right -> "| `%s %s` |%s".formatted(
                right.kind() == Rights.Kind.READS ? "GET" : "POST", right.path(), Stream.of(Role.values())
                        .map(role -> right.allows(role) ? " yes |" : " |").collect(Collectors.joining()))).toList();
        List<String> document = Files.readAllLines(Path.of("docs/serve.md")).stream().filter(line -> line.matches("\\| `(GET|POST) [^`]*` \\|( yes)? \\|( yes)? \\|( yes)? \\|.*"))
                .toList();
        assertThat(document).isEqualTo(rows);
    }

    /** What stands nowhere is the owner's, which would be noticed by everybody else alone. */
    @Test
    void everyAddressThatIsAskedStandsInTheTable() throws IOException {
        Set<String> listed = Rights.TABLE.stream().map(Rights.Right::path).collect(Collectors.toSet());
        List<String> described = new ArrayList<>();
        new ObjectMapper().readTree(Wire.get(Servers.small().address(), "/api/openapi.json").body()).get("paths").fieldNames().forEachRemaining(described::add);
        assertThat(described).hasSizeGreaterThan(8).allMatch(path -> listed.contains(path.replaceAll("\\{[a-z]+}", "*")) || path.startsWith("/api/book/") && listed.contains("/api/book/**"));
        assertThat(new PageHandler(null, null).asked()).hasSizeGreaterThan(6).allMatch(listed::contains);
    }

    @Test
    void nobodyIsLetInWhoIsNotKnown() {
        for (String[] asked : everything()) {
            Wire.Reply reply = Wire.say(address, sent(asked[0], asked[1], "Cookie: sledwright=" + "A".repeat(43), "Sledwright-Token: x"));
            boolean open = Rights.of(asked[0], asked[1]).isOpen();
            assertThat(reply.status() == 401 && reply.body().contains("comes from nobody who is logged in; log in at /login, or by POST to /api/login"))
                    .as("%s %s: %s", asked[0], asked[1], reply.head()).isEqualTo(!open);
            assertThat(open || reply.head().contains("WWW-Authenticate: Session realm=\"sledwright\"")).isTrue();
        }
    }

    @Test
    void eachRoleMayDoWhatTheTableSays() {
        for (Role role : Role.values()) {
            Pass pass = pass(role);
            for (String[] asked : everything()) {
                // What is asked there depends on the body.
                if (asked[1].contains("log") || asked[1].equals("/page/work")) {
                    continue;
                }
                Wire.Reply reply = Wire.say(address, sent(asked[0], asked[1], pass.headers()));
                boolean may = Rights.of(asked[0], asked[1]).allows(role);
                assertThat(reply.status()).as("%s: %s %s: %s", role, asked[0], asked[1], reply.body()).isNotEqualTo(401);
                assertThat(reply.status() == 403).as("%s: %s %s: %s", role, asked[0], asked[1], reply.body()).isEqualTo(!may);
                if (!may) {
                    assertThat(reply.body()).contains("is not for the role %s; it is for ".formatted(role), "owner");
                }
            }
        }
        assertThat(Wire.post(address, "/api/restock", JSON, "{}", pass(Role.SALES).headers()).body()).contains("is not for the role sales; it is for purchasing, owner");
        assertThat(Wire.get(address, "/promises", "Cookie: " + pass(Role.SALES).cookie()).body()).contains("Purchasing or the owner keeps it in the book.").doesNotContain("Keep it like this");
        assertThat(Wire.get(address, "/promises", "Cookie: " + pass(Role.PURCHASING).cookie()).body()).contains("Keep it like this in the book").doesNotContain("Purchasing or the owner");
        assertThat(Wire.post(address, "/api/quote", JSON, QUOTE, pass(Role.BENCH).headers()).status()).isEqualTo(403);
        assertThat(Wire.post(address, "/api/quote", JSON, QUOTE, pass(Role.SALES).headers()).status()).isEqualTo(200);
    }

    /** The bench reads what it puts together, and not what it costs. */
    @Test
    void theBenchReadsTheSheetOfAQuoteWithoutItsPrices() {
        Wire.Reply saved = Wire.post(address, "/api/book?customer=Nordmole", JSON, QUOTE, pass(Role.SALES).headers());
        assertThat(saved.status()).as(saved.body()).isEqualTo(200);
        String number = saved.body().replaceAll("(?s).*\"number\": \"([0-9-]+)\".*", "$1");
        String price = saved.body().replaceAll("(?s).*\"price\": ([0-9.]+).*", "$1");
        String cookie = "Cookie: " + pass(Role.BENCH).cookie();
        for (String format : List.of("json", "text", "csv", "html", "svg")) {
            Wire.Reply sheet = Wire.get(address, "/api/book/" + number + "/sheet?format=" + format, cookie);
            assertThat(sheet.status()).as(sheet.body()).isEqualTo(200);
            assertThat(sheet.body().replaceAll("(?s)<style.*?</style>", "")).contains("WREN").doesNotContain(price, "price", "EUR", "Nordmole");
        }
        assertThat(Wire.get(address, "/api/book/" + number + "/sheet?format=pdf", cookie).body()).startsWith("%PDF-");
        for (String step : List.of("send", "accept")) {
            assertThat(Wire.post(address, "/api/book/" + number + "/" + step, JSON, "", pass(Role.SALES).headers()).body()).contains(price);
        }
        Wire.Reply picked = Wire.post(address, "/api/book/" + number + "/pick", JSON, "", pass(Role.BENCH).headers());
        assertThat(picked.body()).contains(number, "\"state\": \"picked\"").doesNotContain(price, "price", "EUR", "Nordmole");
        for (String kept : List.of("/api/book/" + number, "/api/book/" + number + "/history", "/api/book/" + number + "/request", "/api/book")) {
            assertThat(Wire.get(address, kept, cookie).status()).as(kept).isEqualTo(403);
        }
    }

    @Test
    void whatARoleMayNotAskItMayNotAskAsAFileEither() {
        Wire.Reply reply = Wire.post(address, "/page/work", "application/yaml", "kind: restock\n", pass(Role.BENCH).headers());
        assertThat(reply.status()).isEqualTo(403);
        assertThat(reply.body()).contains("\"value\": \"restock\"", "is a question that the role bench may not ask");
        assertThat(Wire.post(address, "/page/work", "application/yaml", "kind: build\n", pass(Role.BENCH).headers()).status()).isEqualTo(400);
    }

    @Test
    void aChangeNeedsTheTokenOfWhoeverIsLoggedIn() {
        Pass pass = pass(Role.OWNER);
        for (String token : List.of("", "Sledwright-Token: \r\n", "Sledwright-Token: " + pass(Role.OWNER).token() + "\r\n")) {
            Wire.Reply reply = Wire.say(address, "POST /api/logout HTTP/1.1\r\nHost: %s\r\nConnection: close\r\nCookie: %s\r\n%sContent-Length: 0\r\n\r\n"
                    .formatted(address.getAuthority(), pass.cookie(), token));
            assertThat(reply.status()).as(token).isEqualTo(403);
            assertThat(reply.body()).contains("is not the token of who is logged in, which comes with every page, with the answer to /api/login and from GET /api/me; a change needs it");
        }
        assertThat(Wire.get(address, "/api/me", "Cookie: " + pass.cookie()).body()).contains("\"role\": \"owner\"", pass.token());
        Wire.Reply out = Wire.post(address, "/api/logout", JSON, "", pass.headers());
        assertThat(out.status()).isEqualTo(200);
        assertThat(out.head()).contains("Set-Cookie: sledwright=; ", "Expires=Thu, 01 Jan 1970");
        assertThat(Wire.get(address, "/api/me", "Cookie: " + pass.cookie()).status()).isEqualTo(401);
    }

    @Test
    void aWrongPasswordAndAnUnknownNameAreRefusedAlikeAndSlowedDown() {
        Wire.Reply wrong = login("purchasing", "not that one, no", "X-Forwarded-For: 10.1.1.1");
        assertThat(wrong.status()).isEqualTo(401);
        assertThat(wrong.body()).contains("has a wrong name or password");
        assertThat(wrong.head()).doesNotContain("Set-Cookie");
        for (int i = 0; i < 20; i++) {
            String name = i % 2 == 0 ? "nobody" + i : "No Body";
            Wire.Reply unknown = login(name, "whatever it may be", "X-Forwarded-For: 1.2.3.4, 10.2.2.2");
            assertThat(unknown.status()).as("try " + i).isIn(401, 429);
            assertThat(unknown.status() == 429 || unknown.body().equals(wrong.body())).isTrue();
        }
        for (int i = 0; i < 6; i++) {
            login("bench", "not that one, no", "X-Forwarded-For: 10.3.3." + i);
        }
        Wire.Reply late = login("bench", password(Role.BENCH), "X-Forwarded-For: 10.3.3.9");
        assertThat(late.status()).as("even the right one").isEqualTo(429);
        assertThat(late.head()).containsPattern("Retry-After: [1-9]");
        assertThat(late.body()).contains("\"place\": \"the login\"").containsPattern("comes after too many that failed; wait \\d+ s");
        Wire.Reply form = Wire.post(address, "/login", FORM, "name=bench&password=x", "X-Forwarded-For: 10.3.3.10");
        assertThat(form.status()).isEqualTo(429);
        assertThat(form.body().replaceAll("wait \\d+ s", "wait 9 s")).contains("Too many tries; wait 9 s.", "<title>Log in - Reedmere Stores</title>", ">Name</label>", ">Password</label>");
        assertLogged("\\S+ POST /api/login 429 \\d+ ms \\d+ B");
    }

    @Test
    void whatIsNoLoginIsSaid() {
        for (String body : List.of("", "{", "[]", "{\"name\": \"sales\"}", "{\"name\": 1, \"password\": \"x\"}", "{\"name\": {}, \"password\": []}")) {
            Wire.Reply reply = Wire.post(address, "/api/login", JSON, body);
            assertThat(reply.status()).as(body).isEqualTo(400);
            assertThat(reply.body()).contains("must be JSON with two texts, name and password");
        }
        assertThat(Wire.post(address, "/api/login", JSON, "x".repeat(3_000)).status()).isEqualTo(413);
        assertThat(Wire.post(address, "/login", FORM, "name=%zz").body()).contains("has a % without two hexadecimal digits");
        assertThat(Wire.post(address, "/login", FORM, "x", "Origin: http://evil.example").status()).isEqualTo(403);
        assertThat(Wire.post(address, "/logout", FORM, "token=x", "Cookie: " + pass(Role.SALES).cookie()).body()).contains("is not the token of who is logged in, which comes with every page");
    }

    @Test
    void theLogNamesWhoAsked() {
        Wire.post(address, "/api/quote", JSON, QUOTE, pass(Role.PURCHASING).headers());
        assertLogged("\\S+ POST /api/quote 200 \\d+ ms \\d+ B purchasing");
    }

    @Test
    void withoutUsersThereIsNobodyToLogInAndABrowserNeedsAToken() {
        URI open = Servers.small().address();
        assertThat(Wire.get(open, "/login").status()).isEqualTo(404);
        assertThat(Wire.get(open, "/api/me").body()).contains("\"name\": \"\"", "\"role\": \"owner\"");
        String own = "Origin: http://" + open.getAuthority();
        assertThat(Wire.post(open, "/api/logout", JSON, "", own).status()).isEqualTo(403);
        Matcher token = Pattern.compile("<meta name=\"token\" content=\"([^\"]{43})\"").matcher(Wire.get(open, "/").body());
        assertThat(token.find()).isTrue();
        assertThat(Wire.post(open, "/api/logout", JSON, "", own, "Sledwright-Token: " + token.group(1)).status()).as("there is no such address").isEqualTo(404);
        assertThat(Wire.post(open, "/api/logout", JSON, "").status()).isEqualTo(404);
    }

    @Test
    void aPersonIsLedToTheLoginAndFromThereToThePage(Browser browser) {
        browser.visit(address.toString()).until("document.querySelector('#password')");
        assertThat((String) browser.ask("return location.href")).endsWith("/login");
        browser.type("#name", "sales").type("#password", "wrong").press(Keys.ENTER).until("document.querySelector('.enter .fault').textContent !== ''");
        assertThat(browser.text()).contains("Name or password is wrong.");
        assertThat(browser.ask("return document.querySelector('#name').value + ' ' + document.activeElement.id")).isEqualTo("sales password");
        browser.type("#name", "sales").type("#password", password(Role.SALES)).press(Keys.ENTER).until("document.querySelector('.who')");
        assertThat(browser.ask("return location.pathname + ' ' + document.cookie")).as("no script sees the cookie").isEqualTo("/ ");
        assertThat(browser.text()).contains("What is wanted", "sales", "Log out");
        browser.click(".who button").until("document.querySelector('#password')");
        browser.visit(address.toString()).until("document.querySelector('#password')");
        ViewChecks.assertReachedByKeys(browser);
        ViewChecks.assertForEveryone(browser);
        browser.type("#name", "bench").type("#password", password(Role.BENCH)).press(Keys.ENTER).until("document.querySelector('.who')");
        assertThat((String) browser.ask("return location.href")).endsWith("/work");
        assertThat(browser.text()).doesNotContain("A machine");
        assertThat(browser.ask("return document.querySelector('#text').value")).as("the bench may ask no order").isEqualTo("");
        browser.complaints();
    }

    private static void comeIn(Browser browser, Role role) {
        browser.until("document.querySelector('#password')").type("#name", role.toString()).type("#password", password(role)).press(Keys.ENTER).until("document.querySelector('.who')");
    }

    @Test
    void theLoginLeadsWhereSomebodyWasGoing(Browser browser) {
        browser.visit(address + "catalogue").ask("document.querySelector('.who button')?.click()");
        browser.visit(address + "asked?months=3");
        comeIn(browser, Role.SALES);
        assertThat((String) browser.ask("return location.href")).endsWith("/asked?months=3");
        browser.click(".who button").until("document.querySelector('#password')").visit(address + "#require.cores=8&require.memory_gb=48");
        comeIn(browser, Role.SALES);
        browser.until("document.querySelector('.sum')");
        assertThat((String) browser.ask("return location.hash")).isEqualTo("#require.cores=8&require.memory_gb=48");
        browser.click(".who button").until("document.querySelector('#password')").visit(address + "book#2026-0001");
        comeIn(browser, Role.SALES);
        assertThat((String) browser.ask("return location.pathname + location.hash")).isEqualTo("/book#2026-0001");
        browser.click(".who button").until("document.querySelector('#password')").complaints();
    }

    /** A login of this server leads to no other, and to nothing that the role may not open. */
    @Test
    void theLoginLeadsNowhereElse() {
        for (String[] way : new String[][] {{"/book", "/book"}, {"/book?x=1%26y", "/book?x=1&y"}, {"//evil.example/", "/"}, {"/%5Cevil.example", "/"}, {"https://evil.example", "/"}, {"/stock", "/"},
            {"/login", "/"}, {"/book%0d%0aSet-Cookie:%20x=y", "/"}, {"", "/"}}) {
            Wire.Reply in = Wire.post(address, "/login?to=" + way[0], FORM, "name=sales&password=" + password(Role.SALES).replace("&", "%26").replace(" ", "+"));
            assertThat(in.status()).as(way[0] + in.body()).isEqualTo(303);
            assertThat(in.head()).as(way[0]).contains("Location: " + way[1] + "\r\n");
        }
        assertThat(Wire.say(address, "GET /asked?months=3 HTTP/1.1\r\nHost: %s\r\nAccept: text/html\r\nConnection: close\r\n\r\n".formatted(address.getAuthority())).head())
                .contains("Location: /login?to=%2Fasked%3Fmonths%3D3");
        assertThat(Wire.say(address, "GET /api/book/2026-0001?format=pdf HTTP/1.1\r\nHost: %s\r\nAccept: text/html\r\nSec-Fetch-Dest: document\r\nConnection: close\r\n\r\n"
                .formatted(address.getAuthority())).head()).as("a paper that is opened after the session is over").contains("Location: /login?to=%2Fapi%2Fbook%2F2026-0001%3Fformat%3Dpdf");
    }

    @Test
    void whoseSessionIsOverIsToldSoWhereTheyAre(Browser browser) {
        browser.visit(address + "catalogue").ask("document.querySelector('.who button')?.click()");
        String over = "You are logged in no longer. Log in again in another window, then go on here.";
        browser.visit(address + "work");
        comeIn(browser, Role.SALES);
        browser.type("#text", "kind: quote\nrequire: { cores: 8 }\n").click("#go").until("document.querySelector('#progress').textContent === 'Done.'");
        browser.answer("fetch('/api/logout', { method: 'POST', headers: { 'Sledwright-Token': document.querySelector('meta[name=token]').content } }).then(arguments[0])");
        browser.click("#go").until("document.querySelector('#fault').textContent === '" + over + "'");
        assertThat(browser.ask("return document.querySelector('#result').textContent")).isEqualTo("");
        String keeping = "document.querySelector('#keep-fault').textContent === '%s'";
        browser.type("#keep-customer", "Nordmole").click("#keep button").until(keeping.formatted(over));
        browser.answer("fetch('/api/login', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify({ name: 'owner', password: arguments[0] }) }).then(arguments[1])",
                password(Role.OWNER));
        browser.click("#keep button").until(keeping.formatted("Somebody else is logged in here by now. Load the page again to go on as them."));
        browser.complaints();
    }

    /** What somebody may not do has no button. */
    @Test
    void purchasingLooksAtQuotesAndKeepsNone(Browser browser) {
        String number = Wire.post(address, "/api/book?customer=Nordmole", JSON, QUOTE, pass(Role.SALES).headers()).body().replaceAll("(?s).*\"number\": \"([0-9-]+)\".*", "$1");
        browser.visit(address + "catalogue").ask("document.querySelector('.who button')?.click()");
        browser.visit(address + "book#" + number);
        comeIn(browser, Role.PURCHASING);
        browser.until("document.querySelector('#paper').textContent.includes('proved')");
        assertThat(browser.ask("return [...document.querySelectorAll('#quote button')].filter(each => each.checkVisibility()).length")).isEqualTo(0L);
        assertThat(browser.text()).contains(number + ": draft", "What was done with it").doesNotContain("Withdraw it", "Answer again with");
        browser.visit(address.toString()).until("document.querySelector('.sum')");
        assertThat(browser.text()).doesNotContain("Keep it as a quote", "Link for the customer").contains("Make it a line of an order");
        assertThat(browser.complaints()).isEmpty();
    }
}
