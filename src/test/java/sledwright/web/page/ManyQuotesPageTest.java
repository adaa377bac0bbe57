package sledwright.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.browser.Browser;
import sledwright.browser.HtmlValidity;
import sledwright.browser.InBrowser;
import sledwright.report.Schemas;
import sledwright.samples.Folders;
import sledwright.web.Servers;
import sledwright.web.WebServer;
import sledwright.web.Wire;

/** What was asked for and lost, and promises drawn anew, over HTTP and on the page. */
class ManyQuotesPageTest {

    private static final String YAML = "application/yaml";
    private static final String QUOTE = "kind: quote\nname: two of them\nmachines: 2\nrequire: { cores: 8, memory_gb: 32 }\n";

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

    /** An answer that is awaited is pale. */
    private static final String STILL = "getComputedStyle(document.getElementById('answer')).opacity === '1'";

    @TempDir
    Path work;

    private Path shop;
    private WebServer server;
    private URI address;

    @BeforeEach
    void open() throws IOException {
        shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
        server = Servers.start(shop, work.resolve("book.db"), Optional.empty(), Servers.ROOMY, new CopyOnWriteArrayList<>());
        address = server.address();
    }

    @AfterEach
    void close() {
        server.close();
    }

    private Wire.Reply post(String path, String body) {
        return Wire.post(address, path, YAML, body);
    }

    private String get(String path) {
        Wire.Reply reply = Wire.get(address, path);
        assertThat(reply.status()).as(path + reply.body()).isEqualTo(200);
        return reply.body();
    }

    /** One that is promised, one that was too dear. */
    private void quotes() {
        post("/api/book?customer=Orchard", QUOTE);
        post("/api/book/2026-0001/send", "");
        post("/api/book?customer=Nordmole", QUOTE);
        post("/api/book/2026-0002/send", "");
        post("/api/book/2026-0002/decline?reason=Too%20dear", "");
        String number = post("/api/book/2026-0001/accept", "").body();
        assertThat(number).as("the year of the clock").contains("\"state\": \"accepted\"");
    }

    /** All but one of the modules are sold to somebody else; a dearer lot has come in. */
    private void loseTheModules() throws IOException {
        String offers = Files.readString(shop.resolve("offers.csv"));
        Files.writeString(shop.resolve("offers.csv"), offers.replaceAll("(M16,A6,.*),60,2,", "$1,1,2,").replace(",100,7,", ",100,1,"));
    }

    @Test
    void whatWasAskedForAndLostIsToldInEveryFormat() throws IOException {
        assertThat(get("/api/book/lost?months=3")).contains("\"reasons\": []");
        assertThat(get("/api/book/demand?months=3")).contains("\"classes\": []", "\"currency\": \"EUR\"");
        assertThat(get("/asked")).contains("What was asked for, bought and lost", "No quote of these months was lost.", "Nothing was asked for in these months.");
        assertThat(Files.exists(work.resolve("book.db"))).as("a look makes no book").isFalse();
        quotes();
        String lost = get("/api/book/lost?months=3");
        assertThat(lost).contains("\"reason\": \"Too dear\"", "\"above_others\": 0.00");
        assertThat(Schemas.faults("lost-result", lost)).isEmpty();
        assertThat(get("/api/book/lost?months=3&format=text")).contains("1 quote lost from ");
        assertThat(get("/api/book/lost?months=3&format=csv")).startsWith("number,customer,state,reason");
        assertThat(get("/api/book/lost?months=3&format=xlsx")).startsWith("PK");
        assertThat(Schemas.faults("demand-result", get("/api/book/demand?months=3"))).isEmpty();
        assertThat(get("/api/book/demand?months=1&format=csv")).contains("\"two of them\",1,", ",2,1,0,1,0.5,462.50,EUR");
        assertThat(get("/asked?months=1").replaceAll("<[^>]*>", "")).contains(
                "From %s to %s: 1 lost, 0 still open; for 0 no build was found.".formatted(DAY.format(LocalDate.now().minusMonths(1).plusDays(1)), DAY.format(LocalDate.now())), "Bought (filled) of those asked for, by month from the day below each",
                "Amounts are those in the middle. Too dear by: as far as the customer said what it would have paid. Above others: beside what machines of alike requests were bought for; below 0 it was cheaper.",
                "Each lost quote", "Lost quotes as a workbook", "A machine went for", "Won: of those that were decided. A machine went for: the price in the middle.",
                "What was asked for, by month, as CSV");
        assertThat(get("/asked?months=1")).containsPattern("aria-label=\"Quotes bought of those asked for, by month, each from the day that is named: \\d+ \\w+ 1 of 2.\"");
        post("/api/book?customer=Gannet", QUOTE + "forbid: [M64]\n");
        for (String file : new String[] {"memory.csv", "offers.csv"}) {
            Files.writeString(shop.resolve(file), Files.readString(shop.resolve(file)).replaceAll("(?m)^M64,.*\n", ""));
        }
        assertThat(get("/asked")).contains("Not counted, since today's catalogue cannot read what they ask for: 2026-0003.");
        for (String[] wrong : new String[][] {{"/api/book/lost", "must be a whole number of months from 1 to 120"}, {"/api/book/demand?months=121", "must be a whole number of months"},
            {"/api/book/lost?months=1&format=pdf", "must be one of csv, json, text, xlsx"}, {"/api/book/demand?months=1&format=text", "must be one of csv, json"}}) {
            Wire.Reply reply = Wire.get(address, wrong[0]);
            assertThat(reply.status()).as(wrong[0]).isEqualTo(400);
            assertThat(reply.body()).contains(wrong[1]);
        }
        assertThat(post("/api/book/lost?months=1", "").status()).isEqualTo(405);
        assertThat(Wire.get(address, "/api/book/allocate").status()).isEqualTo(405);
    }

    @Test
    void aDrawIsKeptAsItWasSeenOrNotAtAll() throws IOException {
        quotes();
        loseTheModules();
        Wire.Reply drawn = post("/api/book/allocate", "");
        assertThat(drawn.body()).contains("\"applied\": false", "\"number\": \"2026-0001\"").containsAnyOf("\"changed\": 1", "\"moved\": 1");
        assertThat(Schemas.faults("allocation-result", drawn.body())).isEmpty();
        String name = drawn.head().replaceAll("(?s).*Sledwright-Proposal: ([-0-9a-f]+).*", "$1");
        post("/api/book/2026-0001/pick", "");
        Wire.Reply late = post("/api/book/allocate/apply?proposal=" + name, "");
        assertThat(late.status()).isEqualTo(409);
        assertThat(late.body()).contains("the book has moved on since stock was drawn; nothing was changed. Allocate again");
        assertThat(post("/api/book/allocate/apply?proposal=unknown", "").body()).contains("is not known any more; allocate again");
        assertThat(post("/api/book/allocate/apply?by=bert", "").body()).contains("\"applied\": true", "\"picked\": 1");
        for (int i = 0; i < 16; i++) {
            post("/api/book/allocate/apply", "");
        }
        assertThat(post("/api/book/allocate/apply?proposal=" + name, "").body()).as("what nobody looks at is not kept in the place of what was seen")
                .contains("the book has moved on");
    }

    @Test
    @InBrowser
    void promisesAreDrawnAnewAndKeptByAButton(Browser browser) throws IOException {
        browser.visit(address + "promises").click("#draw").until("document.querySelector('#progress').textContent === 'Done.'");
        assertThat(browser.text()).contains("Nothing is promised.");
        quotes();
        loseTheModules();
        browser.click("#draw").until("document.querySelector('#apply:not([hidden])')").until(STILL);
        assertThat(browser.text()).contains("What is promised, drawn anew from today's stock", "every promise can be kept", "2026-0001", "Orchard", "M16 of lot A7", "What becomes of it", "Gives back",
                "For when a lot turns out short, a delivery fails or something better has come in. What customers were told is kept first; then as few machines as possible change; then they cost the least. What was picked stays as it is. Nothing is written until you say so.",
                "Draw all promises anew", "Keep it like this in the book",
                "All that is delivered costs");
        assertThat(browser.barriers()).isEmpty();
        browser.screen(Browser.PHONE, true);
        assertThat(browser.barriers()).isEmpty();
        assertThat(browser.sidewaysScroll()).isZero();
        browser.click("#apply").until("document.querySelector('#progress').textContent === 'The book keeps these units from now on.'");
        assertThat(get("/api/book/2026-0001/history")).contains("\"step\": \"allocate\"");
        browser.click("#draw").until("document.querySelector('#progress').textContent === 'Done.'").until("document.querySelector('#apply').hidden");
        assertThat(browser.text()).contains("Nothing would change in the book.");
        Files.writeString(shop.resolve("offers.csv"), Files.readString(shop.resolve("offers.csv")).replaceAll("(?m)^M(16|64),.*\n", "") + "M64,A8,Marsh Trade,used,78,1,1,0,40\n");
        browser.click("#draw").until("document.querySelector('.verdict.short')").until(STILL);
        assertThat(browser.text()).contains("not every promise can be kept", "cannot be kept");
        assertThat(browser.barriers()).isEmpty();
        assertThat(HtmlValidity.faults(get("/promises"))).isEmpty();
        browser.complaints();
    }

    @Test
    @InBrowser
    void whatWasLostStandsOnThePageWithItsReasons(Browser browser) {
        quotes();
        browser.visit(address + "asked").until("document.querySelector('.columns')");
        assertThat(browser.text()).contains("1 of 2", "quotes bought of those asked for", "Lost, by reason", "Too dear", "Asked for, alike requests together", "two of them", "50 %");
        assertThat(browser.barriers()).isEmpty();
        browser.click(".each summary").until("document.querySelector('.each a').checkVisibility()");
        browser.screen(Browser.PHONE, true);
        assertThat(browser.barriers()).isEmpty();
        assertThat(browser.sidewaysScroll()).isZero();
        browser.type("#months", "2").click("form.beside button").until("location.search === '?months=2'").until("document.querySelector('.columns')");
        browser.click(".each summary").click(".each a").until("location.pathname === '/book'").until("document.querySelector('#state').textContent.startsWith('2026-0002: declined')");
        assertThat(HtmlValidity.faults(get("/asked"))).isEmpty();
        assertThat(get("/asked?months=none")).contains("months: must be a whole number of months from 1 to 120");
        browser.complaints();
    }
}
