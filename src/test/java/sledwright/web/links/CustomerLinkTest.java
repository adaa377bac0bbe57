package sledwright.web.links;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import sledwright.browser.Browser;
import sledwright.browser.HtmlValidity;
import sledwright.browser.InBrowser;
import sledwright.book.Book;
import sledwright.book.CustomerLink;
import sledwright.book.store.BookPlace;
import sledwright.catalog.CatalogReader;
import sledwright.report.page.Wording;
import sledwright.samples.Folders;
import sledwright.web.Servers;
import sledwright.web.WebServer;
import sledwright.web.Wire;

/** Links for customers over HTTP and in a browser. */
@InBrowser
class CustomerLinkTest {

    private static final String YAML = "application/yaml";
    private static final String REQUEST = "kind: quote\nname: Fenland node\nrequire: { cores: 8, memory_gb: 32 }\nlimit: { conditions: [used] }\ndiscount_percent: 5\nalternatives: 3\n";
    private static final String MAY = "/api/links?may=require.cores=4..32&may=limit.conditions=new,refurbished,used";
    private static final List<String> LOG = new CopyOnWriteArrayList<>();

    @TempDir
    private static Path folder;
    private static Path shop;
    private static WebServer server;
    private static URI address;

    @BeforeAll
    static void start() throws IOException {
        shop = Folders.copy(Folders.SHOP, folder.resolve("shop"));
        Files.writeString(shop.resolve("catalog.yaml"), "document: { tax_percent: 20, tax_name: VAT, valid_days: 5 }\n", StandardOpenOption.APPEND);
        server = Servers.start(shop, folder.resolve("book.db"), Optional.empty(), Servers.ROOMY, LOG);
        address = server.address();
    }

    @AfterAll
    static void stop() {
        server.close();
        assertThat(LOG).noneMatch(line -> line.startsWith("defect") || line.contains("Fenland"));
    }

    private static JsonNode made(String path) throws IOException {
        Wire.Reply reply = Wire.post(address, path, YAML, REQUEST);
        assertThat(reply.status()).as(reply.body()).isEqualTo(200);
        return new ObjectMapper().readTree(reply.body());
    }

    private static String path(JsonNode link) {
        return URI.create(link.get("address").textValue()).getPath();
    }

    /** What the customer must not see: suppliers, lots, costs and how many there are of a part. */
    private static Set<String> secrets() throws IOException {
        List<String> rows = Files.readAllLines(Folders.SHOP.resolve("offers.csv"));
        List<String> columns = List.of(rows.get(0).split(","));
        return rows.stream().skip(1).map(row -> row.split(",", -1)).flatMap(cells -> List.of("lot", "supplier").stream()
                .map(name -> cells[columns.indexOf(name)])).filter(cell -> cell.length() > 2).collect(Collectors.toSet());
    }

    @Test
    void theCustomerSeesMachinesAndPricesWithinTheLimitsAndNothingOfTheShops() throws IOException {
        JsonNode link = made(MAY);
        assertThat(link.get("address").textValue()).matches("http://127\\.0\\.0\\.1:\\d+/for/[A-Za-z0-9_-]{43}");
        assertThat(link.get("until").textValue()).isEqualTo(LocalDate.now().plusDays(14).toString());
        Wire.Reply page = Wire.get(address, path(link));
        assertThat(page.status()).isEqualTo(200);
        assertThat(HtmlValidity.faults(page.body())).isEmpty();
        assertThat(page.body()).contains("<h1 id=\"wanted-title\">Fenland node</h1>", "min=\"4\" max=\"32\" value=\"8\"", "from 4 to 32", "<option value=\"used\" selected", "Price before tax",
                "option 1 has the lowest price", "What can be had", "Show what it costs");
        Wire.Reply more = Wire.get(address, path(link) + "/answer?require.cores=16&limit.conditions=refurbished");
        assertThat(more.status()).as(more.body()).isEqualTo(200);
        for (String shown : List.of(page.body(), more.body(), Wire.get(address, path(link) + "/answer?require.cores=32").body())) {
            assertThat(secrets()).hasSizeGreaterThan(3).noneMatch(shown::contains);
            assertThat(shown).doesNotContain("margin", "unit_cost", "supplier", "available", "in stock", "list price");
        }
        assertThat(page.body().replaceAll("[\\h\\s]+", " ")).containsPattern("\\S+, with you by \\S+").containsPattern("\\d with VAT\\. This holds until \\S.*\\.")
                .containsPattern("\\d options side by side").containsPattern("<li>\\d+ \u00d7 [^<]+, (used|refurbished|new)</li>").contains("With you by");
        assertThat(page.body()).containsPattern("You can use this page until \\d\\d? \\p{L}+ \\d{4}\\.");
        String one = Wire.post(address, "/api/links", YAML, REQUEST.replace("alternatives: 3", "alternatives: 1")).body();
        assertThat(Wire.get(address, path(new ObjectMapper().readTree(one))).body()).contains("What you get");
        assertThat(more.body()).isNotEqualTo(Wire.get(address, path(link) + "/answer").body());
        assertThat(more.head()).contains("Cache-Control: no-store", "Content-Security-Policy: default-src 'none'");
    }

    /** So that export and erasure find it. */
    @Test
    void aLinkSaysWhoseItIs() throws IOException {
        String named = made("/api/links?customer=%20Fenland%20Mapping").get("id").textValue();
        String nobody = made("/api/links").get("id").textValue();
        String addressed = new ObjectMapper().readTree(Wire.post(address, "/api/links", YAML, REQUEST + "customer: [Nordmole, Dike Lane 4]\n").body()).get("id").textValue();
        Wire.post(address, "/api/links?customer=Marsh", YAML, REQUEST + "customer: [Nordmole, Dike Lane 4]\n");
        try (Book book = Book.open(BookPlace.of(folder.resolve("book.db")), "test")) {
            assertThat(book.links().all(LocalDate.now())).filteredOn(link -> link.customer().equals("Marsh")).extracting(CustomerLink::request)
                    .containsExactly(REQUEST + "customer: [Marsh]\n");
        }
        JsonNode all = new ObjectMapper().readTree(Wire.get(address, "/api/links").body()).get("links");
        assertThat(all).anyMatch(link -> link.get("id").textValue().equals(named) && link.get("customer").textValue().equals("Fenland Mapping"));
        assertThat(all).anyMatch(link -> link.get("id").textValue().equals(nobody) && link.get("customer").textValue().isEmpty());
        assertThat(all).anyMatch(link -> link.get("id").textValue().equals(addressed) && link.get("customer").textValue().equals("Nordmole"));
    }

    @Test
    void whatIsNotAllowedIsRefused() throws IOException {
        String path = path(made(MAY));
        for (String wrong : List.of("require.cores=33", "require.cores=3", "require.cores=8]%0Aforbid: [x", "limit.conditions=any", "require.memory_gb=64", "objective=most-cores", "use=M16",
                "set=require.cores=9", "for=shop", "steps", "why-not=M16")) {
            Wire.Reply reply = Wire.get(address, path + "/answer?" + wrong.replace(" ", "%20"));
            assertThat(reply.status()).as(wrong + ": " + reply.body()).isEqualTo(400);
            assertThat(reply.body()).containsPattern("must be a number from 4 to 32|must be one of new, refurbished, used|cannot be changed here");
        }
        assertThat(Wire.get(address, path + "?require.cores=33").body()).contains("must be a number from 4 to 32");
        assertThat(Wire.get(address, path + "?require.cores=33").body()).contains("<li>Cores must be a number from 4 to 32.</li>", "from 4 to 32; empty means 8");
        assertThat(Wire.get(address, path + "/answer?require.cores=8.5").body()).contains("\"place\": \"require.cores\"", "\"message\": \"must be a whole number\"").doesNotContain("--set");
        assertThat(Wire.post(address, path, YAML, REQUEST).status()).isEqualTo(405);
        assertThat(Wire.post(address, path, YAML, REQUEST).body()).contains("is not taken here; it must be GET or HEAD");
        assertThat(Wire.get(address, path + "/nothing").status()).isEqualTo(404);
        assertThat(Wire.get(address, path.substring(0, path.length() - 1)).body()).contains("is not answered any more; ask the shop for another");
        assertThat(Wire.get(address, "/for/" + "x".repeat(500)).status()).isEqualTo(404);
        assertThat(Wire.get(address, "/for/").status()).isEqualTo(404);
    }

    /** What the request has may stay, also where the customer may not choose it; what a mail program adds to the address is no wish. */
    @Test
    void whatTheCustomerDidNotChangeIsNotHeldAgainstThem() throws IOException {
        String path = path(made("/api/links?may=require.cores=12..32&may=require.memory_gb=32..64"));
        String before = Wire.get(address, path + "/answer").body();
        Wire.Reply same = Wire.get(address, path + "/answer?require.cores=8&require.memory_gb=32");
        assertThat(same.status()).as(same.body()).isEqualTo(200);
        assertThat(same.body()).isEqualTo(before);
        assertThat(Wire.get(address, path + "?utm_source=mail&require.cores=16").body()).contains("Price before tax", "value=\"16\"").doesNotContain("cannot be changed here");
    }

    @Test
    void aLinkIsMadeOnlyOfWhatCanBeAnswered() {
        for (String[] wrong : new String[][] {{"may=require.cores=9..8", "must be such as require.cores=8..32, the least first, or workload=one,another"},
            {"may=discount_percent=0..90", "discount_percent is nothing that a customer may change from one value to another; it must be one of limit.lead_days, limit.power_w, limit.price, machines"},
            {"may=require.cores=1..2&may=require.cores=1..3", "require.cores stands twice"},
            {"may=workload=nothing-of-the-kind", "workload"}, {"may=machines=0..3", "\"may machines\""}, {"until=2020-01-01", "must be a day from %s to %s".formatted(LocalDate.now(), LocalDate.now().plusDays(90))},
            {"until=soon", "must be a day from "}, {"util=2026-01-01", "is no option of a link; options are may, until and customer"}}) {
            Wire.Reply reply = Wire.post(address, "/api/links?" + wrong[0], YAML, REQUEST);
            assertThat(reply.status()).as(wrong[0]).isEqualTo(400);
            assertThat(reply.body()).contains(wrong[1]);
        }
        String many = List.of("machines", "require.cores", "require.memory_gb", "require.bandwidth_gbs", "require.throughput", "require.work", "require.base_ghz", "require.all_core_ghz",
                "require.gb_per_core", "require.gbs_per_core", "require.spare_slots", "require.processors", "limit.price").stream().map(key -> "may=" + key + "=1..2").collect(Collectors.joining("&"));
        assertThat(Wire.post(address, "/api/links?" + many, YAML, REQUEST).body()).contains("stands more than 12 times");
        assertThat(Wire.post(address, "/api/links", YAML, "kind: build\n").status()).isEqualTo(400);
        assertThat(Wire.post(address, "/api/links", YAML, "kind: quote\nrequire: { cors: 8 }\n").body()).contains("cors");
        assertThat(Wire.post(address, "/api/links", "text/plain", REQUEST).status()).isEqualTo(415);
        assertThat(Wire.say(address, "PUT /api/links HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n").body()).contains("is not taken here; it must be GET or POST");
    }

    @Test
    void itIsListedEndedAndSurvivesARestart() throws IOException {
        JsonNode link = made("/api/links?may=machines=1..4&until=" + LocalDate.now());
        try (WebServer again = Servers.start(shop, folder.resolve("book.db"), Optional.empty(), Servers.ROOMY, LOG)) {
            assertThat(Wire.get(again.address(), path(link)).status()).isEqualTo(200);
            assertThat(Wire.get(again.address(), "/api/links").body()).contains("\"id\": \"" + link.get("id").textValue() + "\"", "\"name\": \"Fenland node\"", "\"machines=1..4\"")
                    .doesNotContain(path(link).substring(5));
        }
        String end = "/api/links/" + link.get("id").textValue() + "/end";
        assertThat(Wire.post(address, end, YAML, "", "Origin: http://" + address.getAuthority()).status()).as("without the token").isEqualTo(403);
        assertThat(Wire.post(address, end, YAML, "").status()).isEqualTo(200);
        assertThat(Wire.post(address, end, YAML, "").body()).contains("names no link that is not over");
        assertThat(Wire.get(address, path(link)).status()).isEqualTo(404);
    }

    @Test
    void whatCannotBeHadSaysWhyAndNotHowManyThereAre() throws IOException {
        JsonNode link = made("/api/links?may=machines=1..500&may=require.cores=1..5000");
        String body = Wire.get(address, path(link) + "/answer?machines=500").body();
        assertThat(body).contains("What does not go together").doesNotContain("only ", "units");
        assertThat(secrets()).noneMatch(body::contains);
        assertThat(Wire.get(address, path(link) + "/answer?require.cores=5000").body()).contains("No machine that our parts make up meets your request as it stands.");
    }

    @Test
    void pricesThatAreStaleAreNoCustomers(@TempDir Path other) throws IOException {
        Path old = Folders.copy(Folders.SHOP, other.resolve("shop"));
        Files.writeString(old.resolve("catalog.yaml"), "house: { stale_after_days: 14 }\n", StandardOpenOption.APPEND);
        try (WebServer stale = Servers.start(old, other.resolve("book.db"), Optional.empty(), Servers.ROOMY, LOG)) {
            JsonNode link = new ObjectMapper().readTree(Wire.post(stale.address(), "/api/links", YAML, REQUEST).body());
            Wire.Reply reply = Wire.get(stale.address(), path(link) + "/answer");
            assertThat(reply.status()).isEqualTo(409);
            assertThat(reply.body()).contains("cannot be answered today: the shop is about to renew its prices");
            assertThat(Wire.get(stale.address(), path(link)).body()).contains("cannot be answered today").doesNotContain("Price before tax");
        }
    }

    /** One language a page: that of the shop's papers. */
    @Test
    void theCustomerReadsTheLanguageOfTheShop(@TempDir Path other, Browser browser) throws IOException {
        Path german = Folders.copy(Folders.SHOP, other.resolve("shop"));
        Files.writeString(german.resolve("catalog.yaml"), "document: { locale: de-DE, tax_percent: 19, tax_name: MwSt., valid_days: 5 }\n", StandardOpenOption.APPEND);
        try (WebServer server = Servers.start(german, other.resolve("book.db"), Optional.empty(), Servers.ROOMY, LOG)) {
            JsonNode link = new ObjectMapper().readTree(Wire.post(server.address(),
                    "/api/links?may=require.cores=4..32&may=limit.lead_days=3..30&may=limit.conditions=new,used&may=require.memory_mode=mirrored,rank-sparing", YAML, REQUEST).body());
            browser.visit(link.get("address").textValue()).until("document.querySelector('#answer .sum')");
            assertThat(browser.ask("return document.documentElement.lang")).isEqualTo("de");
            assertThat(browser.text()).contains("Kerne", "von 4 bis 32; leer bedeutet 8", "Lieferung binnen", "Tage", "Zustand", "gebraucht", "gespiegelt", "wie angefragt", "Speicherbandbreite",
                    "Variante 1", "3 Varianten nebeneinander", "mit MwSt. Das gilt bis zum", "bei Ihnen am", "Bei Ihnen am")
                    .doesNotContainPattern("(?i)\\b(you|until|options?|empty|must|asked|show|memory|used)\\b");
            assertThat(browser.ask("return [...document.querySelectorAll('[aria-label]')].map(each => each.getAttribute('aria-label')).join()")).isEqualTo("Was zu haben ist,Angaben zu allen Varianten");
            String fault = "document.querySelector('#fault').textContent === '%s'";
            browser.type("[name='require.cores']", "33").press(Keys.TAB).until(fault.formatted("Kerne: bitte eine Zahl von 4 bis 32."));
            browser.type("[name='require.cores']", "8.5").press(Keys.TAB).until(fault.formatted("Kerne: bitte eine ganze Zahl."));
            browser.type("[name='require.cores']", "1e").press(Keys.TAB).until(fault.formatted("Kerne: bitte eine Zahl."));
            assertThat(Wire.get(server.address(), path(link) + "?require.cores=33").body()).contains("<li>Kerne: bitte eine Zahl von 4 bis 32.</li>");
            browser.visit(server.address() + "for/over");
            assertThat(browser.text()).isEqualTo("Diese Seite gibt es nicht mehr\nDiese Seite wird nicht mehr beantwortet; bitte fragen Sie den Anbieter nach einer neuen.\n\n404");
            browser.complaints();
        }
    }

    @Test
    void whatMayBeChangedHasANameInTheCustomersLanguage() {
        for (Set<String> some : List.of(Changeable.FIGURES, Changeable.WORDS)) {
            assertThat(some).allSatisfy(key -> assertThat(Wording.of(CatalogReader.read(Folders.SHOP)).say("link.wish." + key)).isNotBlank());
        }
    }

    @Test
    void noCustomerTakesTheMachineFromAllOthers() throws IOException {
        String path = path(made("/api/links?may=require.cores=1..64"));
        List<Wire.Reply> replies = IntStream.range(0, 40).mapToObj(i -> CompletableFuture.supplyAsync(() -> Wire.get(address, path + "/answer?require.cores=" + (1 + i)),
                work -> new Thread(work).start())).toList().stream().map(CompletableFuture::join).toList();
        assertThat(replies).extracting(Wire.Reply::status).contains(200, 429).containsOnly(200, 429);
        Wire.Reply late = replies.stream().filter(reply -> reply.status() == 429).findFirst().orElseThrow();
        assertThat(late.body()).contains("comes while others of the same link are being answered; ask again soon");
        assertThat(late.head()).contains("Retry-After: 1");
        assertThat(Wire.get(address, path + "/answer").status()).isEqualTo(200);
    }

    @Test
    void salesMakesALinkOnThePageAndTheCustomerUsesIt(Browser browser) {
        browser.visit(address + "#require.cores=8&require.memory_gb=32").until("document.querySelector('#answer .sum')");
        browser.click("#link summary").until("document.querySelectorAll('.leeway').length === 2");
        browser.type("[data-key='require.cores'] [data-end='to']", "2,5").click("#link-form button").until("document.querySelector('#link-fault').textContent === 'Cores needs two figures, the least first.'");
        String to = "document.querySelector('.leeway[data-key=\"%s\"] [data-end=to]').value === '%s'";
        browser.type(".leeway[data-key='require.memory_gb'] [data-end='to']", "128").type("[data-path='require.cores']", "16").press(Keys.ENTER).until(to.formatted("require.cores", "32"));
        browser.until(to.formatted("require.memory_gb", "128")).type("[data-path='require.cores']", "8").press(Keys.ENTER).until(to.formatted("require.cores", "16"));
        browser.type("[data-key='require.cores'] [data-end='to']", "24").click("[data-key='require.memory_gb'] [type=checkbox]").click("#link-form button")
                .until("document.querySelector('#link-made input')");
        assertThat(browser.barriers()).isEmpty();
        assertThat(browser.text()).contains("It is shown here only this once.", "sees prices and machines for this request, but no supplier, lot, cost or stock");
        browser.visit((String) browser.ask("return document.querySelector('#link-made input').value")).until("document.querySelector('#answer .sum')");
        String eight = (String) browser.ask("return document.querySelector('.sum').textContent");
        browser.type("[name='require.cores']", "24").press(Keys.TAB).until("document.querySelector('.sum').textContent !== '" + eight + "'").until("location.search.includes('24')");
        browser.until("!document.querySelector('#answer').hasAttribute('aria-busy')");
        assertThat(browser.ask("return document.querySelector('#fault').textContent")).isEqualTo("");
        assertThat((String) browser.ask("return document.querySelector('#said').textContent")).matches(".*\\d\\.");
        browser.type("[name='require.cores']", "25").press(Keys.TAB).until("document.querySelector('#fault').textContent.includes('Cores must be a number from 4 to 24.')");
        browser.type("[name='require.cores']", "8.5").press(Keys.TAB).until("document.querySelector('#fault').textContent === 'Cores must be a whole number.'");
        browser.type("[name='require.cores']", "1e").press(Keys.TAB).until("document.querySelector('#fault').textContent === 'Cores must be a number.'");
        assertThat(browser.complaints()).allMatch(line -> line.contains("400 (Bad Request)"));
    }

    /** The price of a link that is over, or of a shop that is silent, is no price any more. */
    @Test
    void noOldPriceStaysOnTheCustomersPage(Browser browser) throws IOException {
        JsonNode link = made("/api/links?may=machines=1..4");
        browser.visit(link.get("address").textValue()).until("document.querySelector('#answer .sum')");
        assertThat(browser.ask("return document.querySelector('[name=machines]').value")).isEqualTo("1");
        Wire.post(address, "/api/links/" + link.get("id").textValue() + "/end", YAML, "");
        browser.type("[name=machines]", "2").press(Keys.TAB).until("document.querySelector('#fault').textContent === 'This is not answered any more; ask the shop for another.'");
        assertThat(browser.ask("return document.querySelector('#answer').textContent")).isEqualTo("");
        assertThat(browser.complaints()).allMatch(line -> line.contains("404 (Not Found)"));
        JsonNode other = made("/api/links?may=machines=1..4");
        browser.visit(other.get("address").textValue()).until("document.querySelector('#answer .sum')");
        browser.ask("window.fetch = () => Promise.reject(new TypeError('no network'))");
        browser.type("[name=machines]", "2").press(Keys.TAB).until("document.querySelector('#fault').textContent === 'The shop does not answer at the moment.'");
        assertThat(browser.ask("return document.querySelector('#answer').textContent")).isEqualTo("");
    }
}
