package sledwright.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import sledwright.browser.Browser;
import sledwright.browser.HtmlValidity;
import sledwright.browser.InBrowser;
import sledwright.samples.Folders;
import sledwright.web.Servers;
import sledwright.web.WebServer;
import sledwright.web.Wire;

/** The book of quotes over HTTP and on the page. */
class BookPageTest {

    private static final String YAML = "application/yaml";
    private static final String ORDER = "kind: order\nname: two rooms\nlines:\n  web: { machines: 1, require: { cores: 8 }, enclosure: own }\n  files: { machines: 1, require: { cores: 8, memory_gb: 32 }, enclosure: own }\n";
    private static final String QUOTE = "kind: quote\nname: two of them\nmachines: 2\nrequire: { cores: 8, memory_gb: 32 }\n";

    @TempDir
    Path work;

    private WebServer server;
    private URI address;

    @BeforeEach
    void open() throws IOException {
        Path shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
        Files.writeString(shop.resolve("catalog.yaml"), "document: { valid_days: 14 }\n", StandardOpenOption.APPEND);
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
        return Wire.get(address, path).body();
    }

    @Test
    void aQuoteIsKeptShownAndTakenThroughItsLife() {
        assertThat(get("/api/book")).isEqualTo("{\n  \"quotes\": []\n}\n");
        assertThat(Files.exists(work.resolve("book.db"))).as("a look makes no book").isFalse();
        String today = "&today=2026-11-18";
        Wire.Reply saved = post("/api/book?customer=Orchard%20Surveys&note=by%20telephone&by=anna" + today, QUOTE);
        assertThat(saved.status()).as(saved.body()).isEqualTo(200);
        assertThat(saved.body()).contains("\"number\": \"2026-0001\"", "\"state\": \"draft\"", "\"customer\": \"Orchard Surveys\"", "\"request\": \"two of them\"");
        assertThat(get("/api/book?customer=orchard&state=draft&words=telephone&since=2026-11-18&until=2026-11-18")).contains("2026-0001");
        assertThat(get("/api/book?state=sent")).doesNotContain("2026-0001");
        assertThat(get("/api/book/2026-0001")).contains("\"status\": \"proved\"", "Marsh Trade");
        assertThat(get("/api/book/2026-0001?format=text")).contains("two of them");
        assertThat(get("/api/book/2026-0001?for=customer")).doesNotContain("Marsh Trade");
        assertThat(Wire.get(address, "/api/book/2026-0001?format=html").head()).contains("attachment; filename=\"2026-0001.html\"");
        assertThat(get("/api/book/2026-0001?format=pdf")).startsWith("%PDF-");
        assertThat(post("/api/book/2026-0001/send?hold&option=1" + today, "").body()).contains("\"state\": \"sent\"", "\"held_until\": ");
        assertThat(post("/api/book/2026-0001/pick?today=2026-11-18", "").status()).isEqualTo(409);
        assertThat(post("/api/book/2026-0001/accept?by=bert" + today, "").body()).contains("\"state\": \"accepted\"");
        assertThat(get("/api/book/2026-0001/history")).contains("\"step\": \"send\"", "\"by\": \"anna\"", "\"by\": \"bert\"");
        assertThat(get("/api/book/2026-0001/request")).contains("name: two of them", "\"sets\": []");
        assertThat(post("/api/book/2026-0001/copy?customer=Other&set=require.cores=16" + today, "").body()).contains("\"number\": \"2026-0002\"", "\"customer\": \"Other\"");
        assertThat(post("/api/book/2026-0002/revise?set=machines=1" + today, "").body()).contains("\"version\": 2", "\"machines\": 1");
        assertThat(post("/api/book/2026-0002/hold?until=2026-11-20" + today, "").body()).contains("\"held_until\": \"2026-11-20\"");
        assertThat(post("/api/book?customer=Fenland" + today, ORDER).body()).contains("\"number\": \"2026-0003\"", "\"machines\": 2");
        assertThat(get("/api/book/2026-0003")).contains("\"line\": \"web\"", "\"line\": \"files\"");
        assertThat(Wire.get(address, "/api/book/2026-0003?format=xlsx").head()).contains("attachment; filename=\"2026-0003.xlsx\"", "spreadsheetml");
        assertThat(get("/api/book/2026-0003/sheet?format=text&today=2026-11-18")).contains("Bench sheet: 2026-0003, version 1, ", "web, machine 1 of 1", "files, machine 1 of 1");
        assertThat(get("/api/book/2026-0001/sheet?today=2026-11-18")).contains("\"sheets\"");
        assertThat(post("/api/book/2026-0002/release?today=2026-11-18", "").body()).contains("\"held_until\": null");
    }

    @Test
    void whatCannotBeIsSaidWithItsStatus() {
        assertThat(post("/api/book", QUOTE).body()).contains("is missing: who asks");
        assertThat(post("/api/book?customer=X", "kind: order\n").status()).isEqualTo(400);
        assertThat(post("/api/book?customer=X", "kind: quote\nrequire: { cores: 9999 }\n").body()).contains("\"price\": null");
        assertThat(Wire.get(address, "/api/book?state=lost").body()).contains("must be one of draft, sent");
        Wire.Reply backwards = Wire.get(address, "/api/book?since=2026-03-05&until=2026-03-01");
        assertThat(backwards.status()).isEqualTo(400);
        assertThat(backwards.body()).contains("no day is from 2026-03-05 until 2026-03-01; the later day comes last");
        assertThat(Wire.get(address, "/api/book?since=soon").body()).contains("must be a date, such as 2026-11-18");
        for (String[] wrong : new String[][] {{"/api/book/7", "404", "must end with the number of a quote, such as /api/book/2026-0001"}, {"/api/book/2026-0009/history", "404", "there is no quote 2026-0009"},
            {"/api/book/2026-0001?format=docx", "400", "must be one of csv, eml, html, json, pdf, text, xlsx"}, {"/api/book/2026-0001?version=two", "400", "must be a number"},
            {"/api/book/2026-0001?version=7", "400", "has no version 7"}, {"/api/book/2026-0001?for=press", "400", "must be customer or shop"},
            {"/api/book/2026-0001/fly", "404", "ends with no step of a quote; steps are accept, copy"}, {"/api/book/2026-0001/send", "405", "it must be POST"},
            {"/api/book/2026-0001/send/now", "404", "must end with the number"}}) {
            Wire.Reply reply = Wire.get(address, wrong[0]);
            assertThat(reply.status()).as(wrong[0] + reply.body()).isEqualTo(Integer.parseInt(wrong[1]));
            assertThat(reply.body()).contains(wrong[2]);
        }
        assertThat(Wire.say(address, "DELETE /api/book HTTP/1.1\r\nHost: %s\r\nConnection: close\r\n\r\n".formatted(address.getAuthority())).status()).isEqualTo(405);
        assertThat(post("/api/book/2026-0001/send", "").status()).as("nothing to offer").isEqualTo(409);
    }

    @Test
    void theSameByTheSameNameIsKeptOnce() {
        for (String kept : new String[] {"?customer=Orchard&once=a 0001", "?customer=Orchard&once=a 0001", "?customer=Orchard&once=b 0002", "?customer=Fenland&once=a 0003",
            "?customer=Orchard 0004", "?customer=Orchard 0005"}) {
            assertThat(post("/api/book" + kept.split(" ")[0], QUOTE).body()).as(kept).contains("-" + kept.split(" ")[1]);
        }
        assertThat(post("/api/book?customer=Orchard&once=c", "{ kind: quote, require: { cores: much } }").status()).isEqualTo(400);
        assertThat(post("/api/book?customer=Orchard&once=c", QUOTE).body()).as("what came to nothing").contains("-0006");
        assertThat(post("/api/book?customer=Orchard&once=c", QUOTE.replace("8", "4")).body()).as("another request").contains("-0007");
    }

    /** Whoever looks at an old version means its options and its price. */
    @Test
    void aStepThatNamesAnOlderVersionIsRefused() {
        String today = "today=2026-11-18";
        post("/api/book?customer=Orchard&" + today, QUOTE);
        post("/api/book/2026-0001/revise?set=machines=1&" + today, "");
        for (String step : new String[] {"send?option=1&", "hold?", "withdraw?", "revise?", "copy?"}) {
            Wire.Reply stale = post("/api/book/2026-0001/" + step + "version=1&" + today, "");
            assertThat(stale.status()).as(step).isEqualTo(409);
            assertThat(stale.body()).contains("2026-0001 was revised by somebody else meanwhile; version 2 is the last now");
        }
        assertThat(get("/api/book/2026-0001/history")).contains("\"state\": \"draft\"", "\"version\": 2");
        assertThat(post("/api/book/2026-0001/send?version=2&" + today, "").body()).contains("\"state\": \"sent\"");
        for (String wrong : new String[] {"-5", "much", "1,5"}) {
            assertThat(post("/api/book/2026-0001/decline?would-pay=" + wrong + "&" + today, "").body()).contains("must be an amount, such as 1150.00");
        }
        assertThat(post("/api/book/2026-0001/decline?reason=dear&would-pay=100.50&" + today, "").body()).contains("\"state\": \"declined\"");
        assertThat(get("/api/book/lost?months=1&" + today)).contains("\"would_pay\": 100.50");
    }

    @Test
    void thePageSaysWhatCanBeDone() {
        assertThat(get("/book")).contains("Quotes in the book", "Stands at", "Made from", "Made until", "Choose a quote, or keep one from", "hold its parts when it is sent",
                "Hold them until", "Would have paid", "Answer again with", "as its next version", "as a new quote", "Change it in the form", "for the customer, PDF", "page to send",
                "for the shop, PDF", "bench sheet, PDF", "What was done with it", "As it was saved", "It was sent to the customer", "The customer takes it", "Its parts were taken from the shelf",
                "The machines are with the customer", "Hold its parts until its last day", "Give back what it holds", "The customer does not take it", "Withdraw it",
                "data-from=\"draft sent\"");
    }

    @Test
    void aBookThatCannotBeReadIsNoDefect() throws IOException {
        Path broken = Files.writeString(work.resolve("broken.db"), "no book at all, but some text that is long enough to be looked at ".repeat(9));
        try (WebServer other = Servers.start(Folders.SHOP, broken, Optional.empty(), Servers.ROOMY, new CopyOnWriteArrayList<>())) {
            Wire.Reply reply = Wire.get(other.address(), "/api/book");
            assertThat(reply.status()).as(reply.body()).isEqualTo(503);
            assertThat(reply.body()).contains("cannot be used now: ");
            assertThat(Wire.post(other.address(), "/api/quote", YAML, QUOTE).body()).contains("cannot be read now, so nobody knows what is kept for others: ");
        }
    }

    /** The stock of every answer is the catalogue's less what is kept; who comes second reads what it costs now. */
    @Test
    void whatIsKeptForOneIsNotOfferedToAnother() {
        String four = QUOTE.replace("machines: 2", "machines: 3");
        String before = Wire.post(address, "/api/quote", YAML, four).body();
        post("/api/book?customer=First", four);
        post("/api/book?customer=Second", four);
        assertThat(post("/api/book/2026-0001/hold", "").status()).isEqualTo(200);
        assertThat(Wire.post(address, "/api/quote", YAML, four).body()).isNotEqualTo(before);
        Wire.Reply second = post("/api/book/2026-0002/hold", "");
        assertThat(second.status()).as(second.body()).isEqualTo(409);
        assertThat(second.body()).contains("takes what is not there any more", "2026-0001 has some").containsAnyOf("It costs", "its request cannot be met");
        post("/api/book/2026-0001/release", "");
        assertThat(Wire.post(address, "/api/quote", YAML, four).body()).isEqualTo(before);
    }

    @Test
    @InBrowser
    void quotesAreKeptAndTakenFurtherOnThePage(Browser browser) {
        browser.visit(address + "#require.cores=8&require.memory_gb=32&machines=2&customer=Orchard+Surveys&customer=Dyke+2").until("document.querySelector('.verdict')")
                .type("#keep-customer", "Orchard Surveys").press(Keys.ENTER);
        browser.until("document.querySelector('#kept a')").click("#kept a").until("document.querySelector('#history tbody tr')").until("document.querySelector('#paper').textContent.includes('proved')");
        assertThat(browser.text()).contains("2026-0001: draft", "Orchard Surveys", "2 machines");
        assertThat(browser.barriers()).isEmpty();
        browser.click("#hold").click("[data-step=send]").until("document.querySelector('#state').textContent.startsWith('2026-0001: sent, held until')");
        browser.click("[data-step=accept]").until("document.querySelector('#state').textContent === '2026-0001: accepted'");
        assertThat(browser.ask("return document.querySelector('#life [aria-current]').textContent")).isEqualTo("accepted");
        browser.type("#other", "Nordmole" + Keys.ENTER).until("document.querySelector('#state').textContent.startsWith('2026-0002: draft')")
                .until("document.querySelectorAll('.entry').length === 2");
        browser.type("#find-customer", "orch").until("document.querySelectorAll('.entry').length === 1");
        browser.click(".entry").until("document.querySelector('#state').textContent === '2026-0001: accepted'");
        browser.back().until("document.querySelector('#state').textContent.startsWith('2026-0002')");
        browser.click("#reopen").until("location.pathname === '/'").until("location.hash.includes('require.cores=8')");
        assertThat(browser.ask("return location.hash")).asString().contains("customer=Nordmole").doesNotContain("Orchard", "Dyke");
        post("/api/book/2026-0001/copy?set=customer=%5BOrchard%20Surveys,%20Mill%201%5D", "");
        for (String[] kept : new String[][] {{"2026-0001", "customer=Orchard+Surveys&customer=Dyke+2"}, {"2026-0003", "customer=Orchard+Surveys&customer=Mill+1"}}) {
            browser.visit(address + "book#" + kept[0]).until("document.querySelector('#state').textContent.startsWith('%s')".formatted(kept[0])).click("#reopen")
                    .until("location.hash.includes('%s')".formatted(kept[1]));
        }
        assertThat(HtmlValidity.faults(get("/book"))).isEmpty();
    }

    /** The price that is shown is of the catalogue as it was then, what is kept is of that of now. */
    @Test
    @InBrowser
    void whatWasFoundIsPrintedUntilAQuoteIsOpened(Browser browser) throws IOException {
        post("/api/book?customer=Orchard", QUOTE);
        browser.visit(address + "book").until("document.querySelector('#quotes li')");
        assertThat(onPaper(browser)).contains("Quotes in the book", "1 quote", "Orchard").doesNotContain("Choose a quote", "Made from");
        browser.click("#quotes button, #quotes a").until("document.querySelector('#history tbody tr')");
        assertThat(onPaper(browser)).contains("draft", "What was done with it").doesNotContain("Quotes in the book");
    }

    private static String onPaper(Browser browser) throws IOException {
        try (PDDocument printed = Loader.loadPDF(browser.printed())) {
            return new PDFTextStripper().getText(printed);
        }
    }

    @Test
    @InBrowser
    void whatIsKeptAtAnotherPriceThanWasShownIsSaid(Browser browser) throws IOException {
        String year = String.valueOf(java.time.Year.now().getValue());
        browser.visit(address + "#require.cores=8&require.memory_gb=16&enclosure=own").until("document.querySelector('.sum')")
                .type("#keep-customer", "Orchard Surveys").press(Keys.ENTER).until("document.querySelector('#kept a')");
        assertThat(browser.ask("return document.querySelector('#kept').textContent")).isEqualTo("Kept as " + year + "-0001.");
        browser.visit(address + "work").type("#text", ORDER).click("#go").until("document.querySelector('#progress').textContent === 'Done.'")
                .type("#keep-customer", "Fenland").press(Keys.ENTER).until("document.querySelector('#kept a')");
        assertThat(browser.ask("return document.querySelector('#kept').textContent")).isEqualTo("Kept as " + year + "-0002.");
        browser.visit(address + "#require.cores=8&require.memory_gb=16&enclosure=own").until("document.querySelector('.sum')");
        Path offers = work.resolve("shop/offers.csv");
        Files.writeString(offers, Files.readString(offers).replace("REED-S,A2,Marsh Trade,used,150,", "REED-S,A2,Marsh Trade,used,160,"));
        browser.type("#keep-customer", "Orchard Surveys").press(Keys.ENTER).until("document.querySelector('#kept a')");
        assertThat(browser.ask("return document.querySelector('#kept').textContent"))
                .isEqualTo("Kept as " + year + "-0003, for €261.50, not as it was shown: what is kept is answered anew.");
        browser.visit(address + "work").type("#text", ORDER).click("#go").until("document.querySelector('#progress').textContent === 'Done.'");
        Files.writeString(offers, Files.readString(offers).replaceAll("(?m)^([^,\n]+,[^,]*,[^,]*,[^,]*,)([0-9])", "$1" + "9$2"));
        browser.type("#keep-customer", "Fenland").press(Keys.ENTER).until("document.querySelector('#kept a')");
        assertThat((String) browser.ask("return document.querySelector('#kept').textContent"))
                .startsWith("Kept as " + year + "-0004, for €").endsWith(", not as it was shown: what is kept is answered anew.");
    }

    /** An order that was stopped short of machines has no price to offer; what is kept of it may have one. */
    @Test
    @InBrowser
    void whatIsKeptWithAPriceThoughNoneWasShownIsSaid(Browser browser) {
        String year = String.valueOf(java.time.Year.now().getValue());
        browser.visit(address + "work").type("#text", ORDER).ask("const send = window.fetch; window.fetch = (path, how) => path !== '/page/work' ? send(path, how)"
                + " : Promise.resolve(new Response('event: answer\\ndata: {\"text\": \"short\", \"price\": null}\\n\\n'))");
        browser.click("#go").until("document.querySelector('#progress').textContent === 'Done.'");
        browser.ask("window.seen = []; new MutationObserver(() => window.seen.push(document.querySelector('#kept').textContent)).observe(document.querySelector('#kept'), { childList: true })");
        browser.type("#keep-customer", "Fenland").press(Keys.ENTER).until("document.querySelector('#kept a')");
        assertThat((String) browser.ask("return document.querySelector('#kept').textContent")).startsWith("Kept as " + year + "-0001, for ")
                .endsWith(", not as it was shown: what is kept is answered anew.");
        assertThat(browser.ask("return window.seen[0]")).isEqualTo("Working on it.");
    }

    @Test
    @InBrowser
    void theBenchHasTheSheetsOfQuotesAndOrdersAndNotesWhatIsDone(Browser browser) {
        post("/api/book?customer=Orchard", QUOTE);
        String year = String.valueOf(java.time.Year.now().getValue());
        browser.visit(address + "work").type("#text", ORDER).type("#keep-customer", "Fenland").press(Keys.ENTER).until("document.querySelector('#kept a')");
        assertThat(browser.text()).contains("At the bench", "Quote or order", "Show its sheet", "It is picked", "It is delivered", "Keep it in the book", "Kept as " + year + "-0002.");
        browser.type("#number", year + "-0001").press(Keys.ENTER).until("document.querySelector('#result').textContent.includes('Bench sheet: " + year + "-0001')").until("document.querySelector('#board svg')");
        assertThat(browser.ask("return document.querySelector('#paper').getAttribute('href')")).isEqualTo("/api/book/" + year + "-0001/sheet?format=pdf");
        assertThat(browser.text()).contains("as PDF, to print", "The sheet is there.");
        assertThat(browser.barriers()).isEmpty();
        browser.click("[data-step=pick]").until("document.querySelector('#bench-fault').textContent !== ''");
        post("/api/book/" + year + "-0001/send", "");
        post("/api/book/" + year + "-0001/accept", "");
        browser.click("[data-step=pick]").until("document.querySelector('#progress').textContent === '" + year + "-0001: picked.'");
        browser.type("#number", year + "-0002").press(Keys.ENTER).until("document.querySelector('#result').textContent.includes('files, machine 1 of 1')");
        browser.type("#number", year + "-0009").press(Keys.ENTER).until("document.querySelector('#bench-fault').textContent.includes('0009')");
        assertThat(browser.ask("return document.querySelector('#paper').hidden")).isEqualTo(true);
        browser.screen(Browser.PHONE, true);
        assertThat(browser.sidewaysScroll()).isZero();
        browser.visit(address + "book#" + year + "-0001").until("document.querySelector('#bench').getAttribute('href') === '/api/book/" + year + "-0001/sheet?format=pdf'");
        assertThat(browser.complaints()).allMatch(line -> line.contains("409 (Conflict)") || line.contains("404 (Not Found)"));
    }

    /** Whoever builds by what is on the screen must not build another machine. */
    @Test
    @InBrowser
    void noSheetStaysUnderAnotherNumber(Browser browser) {
        post("/api/book?customer=Orchard", QUOTE);
        String number = java.time.Year.now().getValue() + "-0001";
        String left = "return document.querySelector('#result').textContent + document.querySelector('#progress').textContent + document.querySelector('#board').childNodes.length + document.querySelector('#paper').hidden";
        String shown = "document.querySelector('#board svg') && document.querySelector('#progress').textContent === 'The sheet is there.'";
        browser.visit(address + "work").type("#number", number).press(Keys.ENTER).until(shown);
        browser.type("#number", "2026-9999").press(Keys.ENTER).until("document.querySelector('#bench-fault').textContent.includes('there is no quote 2026-9999')");
        assertThat(browser.ask(left)).isEqualTo("0true");
        browser.type("#number", "7").press(Keys.ENTER).until("document.querySelector('#bench-fault').textContent === 'A quote or an order has a number such as 2026-0001.'");
        browser.type("#number", number).press(Keys.ENTER).until(shown).until("document.querySelector('#bench-fault').textContent === ''");
        browser.type("#number", Keys.DELETE).press(Keys.ENTER).until("document.querySelector('#bench-fault').textContent.startsWith('A quote or an order has a number')");
        assertThat(browser.ask(left)).isEqualTo("0true");
        browser.type("#number", number).press(Keys.ENTER).until(shown);
        browser.type("#number", "2026-9999").click("[data-step=pick]").until("document.querySelector('#bench-fault').textContent.includes('there is no quote 2026-9999')");
        assertThat(browser.ask(left)).isEqualTo("0true");
        assertThat(browser.complaints()).noneMatch(line -> line.contains("Uncaught"));
    }

    /** Options of one quote beside another would be taken for its own. */
    @Test
    @InBrowser
    void theQuoteThatWasChosenLastIsShown(Browser browser) {
        post("/api/book?customer=Orchard", QUOTE);
        post("/api/book?customer=Fenland", QUOTE.replace("machines: 4", "machines: 1"));
        String year = String.valueOf(java.time.Year.now().getValue());
        browser.visit(address + "book#" + year + "-9999").until("document.querySelector('#none').textContent === 'there is no quote " + year + "-9999 in the book'");
        browser.visit(address + "book").until("document.querySelectorAll('.entry').length === 2");
        browser.ask("const send = window.fetch; window.fetch = async (path, how) => { const reply = await send(path, how);"
                + " if (String(path).includes('-0001')) { await new Promise(done => setTimeout(done, 800)); window.late = (window.late || 0) + 1; } return reply; };");
        browser.click("[data-number='" + year + "-0001']").click("[data-number='" + year + "-0002']").until("window.late >= 1").until("document.querySelector('#paper').textContent.includes('proved')");
        assertThat(browser.ask("return document.querySelector('#state').textContent + location.hash")).isEqualTo(year + "-0002: draft#" + year + "-0002");
        assertThat(browser.ask("return document.querySelector('#pdf').getAttribute('href')")).asString().contains("-0002");
        browser.back().until("document.querySelector('#quote').hidden");
        assertThat(browser.complaints()).allMatch(line -> line.contains("404 (Not Found)"));
    }

    private long kept() {
        return get("/api/book").split("\"number\"", -1).length - 1;
    }

    @Test
    @InBrowser
    void whatIsKeptIsKeptOnce(Browser browser) {
        String button = "document.querySelector('#keep button')";
        browser.visit(address + "#require.cores=8&require.memory_gb=32").until("document.querySelector('.sum')").type("#keep-customer", "Orchard");
        browser.ask(button + ".click(); " + button + ".click(); document.querySelector('#keep').requestSubmit()");
        browser.until("document.querySelector('#kept a')").until(button + ".disabled").click("#keep-customer").press(Keys.ENTER);
        browser.ask("document.querySelector('#keep').requestSubmit()");
        browser.type("#keep-note", "again").until("!" + button + ".disabled").type("#keep-note", Keys.DELETE).until(button + ".disabled");
        assertThat(kept()).isEqualTo(1);
        browser.type("[data-path='require.cores']", "16").press(Keys.ENTER).until("!" + button + ".disabled").click("#keep button")
                .until("document.querySelector('#kept').textContent.includes('-0002')");
        browser.click("#kept a").until("document.querySelector('#state').textContent.includes('draft')").until("document.querySelector('#paper').textContent.includes('proved')");
        browser.ask("const copy = document.querySelector('[data-again=copy]'); copy.click(); copy.click()");
        browser.until("document.querySelector('#state').textContent.includes('-0003')").until("document.querySelectorAll('.entry').length === 3");
        assertThat(kept()).isEqualTo(3);
    }

    @Test
    @InBrowser
    void whatCannotBeTakenBackIsPressedTwice(Browser browser) {
        String number = java.time.Year.now().getValue() + "-0001";
        post("/api/book?customer=Orchard", QUOTE);
        browser.visit(address + "book#" + number).until("document.querySelector('#state').textContent === '" + number + ": draft'");
        browser.click("[data-step=withdraw]");
        assertThat(browser.text()).contains("Withdraw it: press once more, for it cannot be taken back");
        browser.click("[data-step=send]").until("document.querySelector('#state').textContent === '" + number + ": sent'");
        assertThat(browser.text()).doesNotContain("once more");
        browser.click("[data-step=withdraw]").click("[data-step=withdraw]").until("document.querySelector('#state').textContent === '" + number + ": withdrawn'");
    }

    @Test
    @InBrowser
    void whatIsTypedStaysUntilItIsDone(Browser browser) {
        post("/api/book?customer=Orchard", QUOTE);
        post("/api/book?customer=Fenland", ORDER);
        String year = String.valueOf(java.time.Year.now().getValue());
        browser.visit(address + "book#" + year + "-0001").until("document.querySelector('#paper').textContent.includes('proved')").until("!document.querySelector('#reopen').hidden");
        browser.type("#sets", "require.cores=abc").click("[data-again=revise]").until("document.querySelector('#fault').textContent !== ''");
        assertThat(browser.ask("return document.querySelector('#sets').value")).isEqualTo("require.cores=abc");
        browser.type("#sets", "limit.conditions=[new, used] name=my machine").press(Keys.ENTER).until("document.querySelector('#gist').textContent.includes('my machine')").until("document.querySelector('#sets').value === ''");
        assertThat(get("/api/book/" + year + "-0001/request")).contains("limit.conditions=[new, used]", "name=my machine");
        post("/api/book/" + year + "-0001/send", "");
        browser.type("#reason", "by telephone").click("[data-step=send]").until("document.querySelector('#fault').textContent !== ''");
        assertThat(browser.ask("return document.querySelector('#reason').value")).isEqualTo("by telephone");
        browser.click("[data-number='" + year + "-0002']").until("document.querySelector('#paper').textContent.includes('files')").until("document.querySelector('#reopen').hidden");
        assertThat(browser.ask("return document.querySelector('#reason').value")).as("said of another").isEqualTo("");
        post("/api/book/" + year + "-0002/revise?set=lines.web.machines=1", "");
        browser.click("[data-step=send]").until("document.querySelector('#fault').textContent.includes('version 2 is the last now')").until("document.querySelector('#version').value === '2'");
        browser.click("[data-step=send]").until("document.querySelector('#state').textContent.includes('sent')").type("#would-pay", "10").click("[data-step=decline]").click("[data-step=decline]")
                .until("document.querySelector('#state').textContent.includes('declined')").until("document.querySelector('#would-pay').closest('label').hidden");
        assertThat(get("/api/book/lost?months=1")).contains("\"would_pay\": 10.00");
        assertThat(browser.complaints()).noneMatch(line -> line.contains("Uncaught"));
    }
}
