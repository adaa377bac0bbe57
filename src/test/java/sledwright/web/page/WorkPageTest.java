package sledwright.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.CopyOnWriteArrayList;
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

/** Files of every kind, papers, and the catalogue. */
class WorkPageTest {

    private static final URI SERVER = Servers.small().address();
    private static final String YAML = "application/yaml";
    private static final String BUILD = "kind: build\nplatform: WREN-2\nprocessor: H1-08\nprocessors: 1\ncooling: WREN-HS-1\nsupply: RS-750\nsupply_count: 1\nmodules: { 1A1: M16 }\n";
    private static final String QUOTE = "kind: quote\nrequire: { cores: 8, memory_gb: 32 }\n";

    @Test
    @InBrowser
    void anOrderIsAnsweredAndAFaultIsShownInItsLine(Browser browser) {
        browser.visit(SERVER + "work").click("#go").until("document.querySelector('#progress').textContent === 'Done.'");
        assertThat(browser.ask("return document.querySelector('#result').textContent").toString()).contains("front", "back", "Parts to pick");
        assertThat(browser.ask("return document.activeElement.id")).as("where whoever works with keys alone goes on").isEqualTo("answer");
        browser.type("#text", "kind: order\nlines:\n  a: { machines: none }\n").click("#go").until("document.querySelector('#fault').textContent.startsWith('line 3: ')");
        assertThat(browser.ask("return document.querySelector('#result').textContent + document.querySelector('#progress').textContent")).as("an answer to another text").isEqualTo("");
        assertThat(browser.ask("const text = document.querySelector('#text'); return text.value.slice(text.selectionStart, text.selectionEnd)")).isEqualTo("  a: { machines: none }");
        assertThat(browser.complaints()).allMatch(line -> line.contains("400 (Bad Request)"));
        assertThat(HtmlValidity.faults(Wire.get(SERVER, "/work").body())).isEmpty();
        browser.visit(SERVER + "catalogue");
        assertThat(browser.text()).contains("What the catalogue holds, and what is odd about it", "Reedmere Stores", "platforms");
        assertThat(browser.barriers()).isEmpty();
    }

    /** An answer beside a text that it does not answer says so, and none stays where nobody answers. */
    @Test
    @InBrowser
    void anAnswerToAnotherTextIsNotTakenForOneToThis(Browser browser) {
        String progress = "document.querySelector('#progress').textContent === '%s'";
        browser.visit(SERVER + "work").type("#text", QUOTE).click("#go").until(progress.formatted("Done."));
        browser.type("#text", QUOTE.replace("8", "9")).until(progress.formatted("The text has changed since it was answered."));
        browser.type("#text", QUOTE).until(progress.formatted("Done."));
        browser.ask("window.fetch = () => Promise.reject(new TypeError('no network'))");
        browser.click("#go").until(progress.formatted("The server does not answer. Is it still running?"));
        assertThat(browser.ask("return document.querySelector('#result').textContent")).isEqualTo("");
    }

    /** What is at most so much is never rounded down. */
    @Test
    @InBrowser
    void aGapIsNotSmallerThanItIs(Browser browser) {
        browser.visit(SERVER + "work").ask("window.fetch = () => Promise.resolve(new Response('event: progress\\ndata: {\"price\": 100.01, \"bound\": 100.0, \"gap\": 0.00002, \"seconds\": 1.2}\\n\\n'))");
        browser.click("#go").until("document.querySelector('#progress').textContent === '1 s: €100.01, not below €100.00, at most 0.01 % too dear'");
    }

    /** A sheet of an order takes its time. */
    @Test
    @InBrowser
    void aSheetIsMadeOnce(Browser browser) {
        browser.visit(SERVER + "work").type("#text", "kind: order\n").ask("const send = window.fetch; window.sent = 0; window.fetch = (path, how) => { window.sent++; return send(path, how); }");
        browser.ask("document.querySelector('#sheet').click(); document.querySelector('#sheet').click()");
        browser.until("document.querySelector('#fault').textContent !== ''").until("!document.querySelector('#sheet').disabled");
        assertThat(browser.ask("return window.sent")).isEqualTo(1L);
        assertThat(browser.complaints()).allMatch(line -> line.contains("400 (Bad Request)"));
    }

    @Test
    @InBrowser
    void aFileThatIsDroppedIsOpened(Browser browser) {
        browser.visit(SERVER + "work").ask("const held = new DataTransfer(); held.items.add(new File([`" + BUILD + "`], 'build.yaml'));"
                + "window.stopped = ['dragover', 'drop'].map(type => !document.querySelector('#text').dispatchEvent(new DragEvent(type, { bubbles: true, cancelable: true, dataTransfer: held })))");
        browser.until("document.querySelector('#result').textContent.includes('valid: every rule holds')");
        assertThat(browser.ask("return window.stopped.join()")).as("the browser shows no file in the page's place").isEqualTo("true,true");
    }

    @Test
    @InBrowser
    void theBoardIsDrawn(Browser browser) {
        browser.visit(SERVER + "#require.cores=8&require.memory_gb=32").until("document.querySelector('[data-do=board]')").click("[data-do=board]")
                .until("document.querySelector('.board svg')");
        assertThat(browser.barriers()).isEmpty();
        String drawn = "document.querySelector('.board svg').textContent.includes('H2-16')";
        assertThat(browser.ask("return " + drawn)).isEqualTo(false);
        browser.ask("document.getElementById('more').open = true");
        browser.click("[data-add='use']").type("[data-part='use']", "H2-16").press(Keys.ENTER).until("location.hash.includes('use=H2-16')").until(drawn);
    }

    @Test
    @InBrowser
    void aBuildIsJudgedWithEveryChangeAndTakenToTheBoard(Browser browser) {
        String result = "document.querySelector('#result').textContent.includes('%s')";
        browser.visit(SERVER + "work").type("#text", BUILD).until(result.formatted("valid: every rule holds")).until("document.querySelector('#board svg')");
        browser.type("#text", BUILD.replace("1A1", "1A2")).until(result.formatted("slot-order")).until("!document.querySelector('#board svg')");
        browser.click("#onboard").until("document.querySelector('.broken').textContent.includes('slot-order')");
        assertThat(browser.complaints()).as("what is said of faults in what was typed").allMatch(line -> line.contains("409 (Conflict)"));
    }

    @Test
    @InBrowser
    void anOrderIsPutTogetherFromSingleMachines(Browser browser) {
        String result = "document.querySelector('#progress').textContent === 'Done.' && document.querySelector('#result').textContent.includes('%s')";
        withoutOrder(browser).visit(SERVER + "#require.cores=8&require.memory_gb=32&machines=2&limit.price=5000&workload.parallel=0.9").until("document.querySelector('.sum')").type("#line-name", "front").press(Keys.ENTER)
                .until("document.querySelector('#ordered a')");
        assertThat(browser.text()).contains("Make it a line of an order", "Name of the line", "Put it into the order", "front stands in the order of 1 line. Left out, for a line has none: limit.price.");
        browser.type("[data-path='require.cores']", "16").press(Keys.ENTER).until("location.hash.includes('cores=16')");
        browser.click("#to-order button").until("document.querySelector('#ordered').textContent === 'line 2 stands in the order of 2 lines. Left out, for a line has none: limit.price.'");
        browser.click("#ordered a").until(result.formatted("line 2: 2 machines"));
        assertThat(browser.text()).contains("Lines of the order", "front 8 cores, 32 GB of memory", "Another line", "Take all out");
        assertThat(browser.ask("return document.querySelector('#text').value")).asString().contains("    workload:\n      parallel: 0.9\n");
        browser.until("!document.querySelector('#answer').hasAttribute('aria-busy')");
        assertThat(browser.barriers()).isEmpty();
        browser.type("[data-line='1']", "1").press(Keys.TAB).until(result.formatted("line 2: 1 machine"));
        browser.screen(Browser.PHONE, false);
        assertThat(browser.sidewaysScroll()).isZero();
        browser.click("[aria-label='Without front']").until("!document.querySelector('[data-line=\"1\"]')").until(result.formatted("line 2: 1 machine"));
        browser.click("[aria-label='Change line 2']").until("location.hash.includes('require.cores=16')").until("document.querySelector('.sum')");
        browser.type("#line-name", "line 2").press(Keys.ENTER).until("document.querySelector('#ordered').textContent.startsWith('line 2 is changed in ')");
        browser.click("#ordered a").until(result.formatted("line 2")).click("#empty").until("document.querySelector('#order').hidden");
    }

    /** Tests share a tab, which keeps its order. */
    private static Browser withoutOrder(Browser browser) {
        browser.visit(SERVER + "catalogue").ask("sessionStorage.clear()");
        return browser;
    }

    private static void puts(Browser browser, String name) {
        browser.click("#to-order button").until("document.querySelector('#ordered').textContent.startsWith('" + name + " ')");
    }

    /** The names of the lines, as they stand in the list. */
    private static Object lines(Browser browser) {
        return browser.ask("return [...document.querySelectorAll('#lines b')].map(each => each.textContent).join(', ')");
    }

    private static void putThreeLines(Browser browser) {
        withoutOrder(browser).visit(SERVER + "#require.cores=8&require.memory_gb=32").until("document.querySelector('.sum')");
        for (int number = 1; number <= 3; number++) {
            puts(browser, "line " + number);
        }
    }

    @Test
    @InBrowser
    void aLineWithoutANameTakesNoOthersPlace(Browser browser) {
        String done = "document.querySelector('#progress').textContent === 'Done.'";
        putThreeLines(browser);
        browser.click("#ordered a").until(done).click("[aria-label='Without line 1']").until("document.querySelectorAll('.line').length === 2").until(done);
        browser.click("#order a[href='/']").until("document.querySelector('.sum')");
        puts(browser, "line 4 stands in");
        browser.click("#ordered a").until(done);
        assertThat(lines(browser)).isEqualTo("line 2, line 3, line 4");
    }

    @Test
    @InBrowser
    void theLineIsChangedForWhichThePageWasOpened(Browser browser) {
        String result = "document.querySelector('#progress').textContent === 'Done.' && document.querySelector('#result').textContent.includes('%s')";
        putThreeLines(browser);
        browser.click("#ordered a").until(result.formatted("line 2: 1 machine"));
        browser.type("[data-line='1']", "2").press(Keys.TAB).until(result.formatted("line 2: 2 machines"));
        browser.click("[aria-label='Change line 2']").until("document.querySelector('#line-name').value === 'line 2'").until("document.querySelector('.sum')");
        assertThat(browser.ask("return decodeURIComponent(location.hash)")).asString().contains("machines=2", "require.cores=8");
        browser.type("#line-name", "line 3").press(Keys.ENTER).until("document.querySelector('#ordered').textContent === 'line 3 is another line of the order already; choose another name.'");
        browser.type("[data-path='require.cores']", "16").press(Keys.ENTER).type("#line-name", "back").press(Keys.ENTER)
                .until("document.querySelector('#ordered').textContent.startsWith('back is changed in the order of 3 lines')");
        assertThat(browser.ask("return location.search + document.querySelector('#line-name').value")).isEqualTo("");
        browser.click("#ordered a").until(result.formatted("back: 2 machines"));
        assertThat(browser.text()).contains("back 16 cores", "line 1 8 cores", "line 3 8 cores").doesNotContain("line 2");
    }

    @Test
    @InBrowser
    void whatIsWrittenIntoAnOrderByHandStays(Browser browser) {
        String text = "document.querySelector('#text').value";
        String done = "document.querySelector('#progress').textContent === 'Done.'";
        withoutOrder(browser).visit(SERVER + "#require.cores=8&require.memory_gb=32").until("document.querySelector('.sum')");
        puts(browser, "line 1");
        puts(browser, "line 2");
        browser.click("#ordered a").until(done);
        browser.ask("const text = document.querySelector('#text'); text.value = text.value.replace('cores: 8', 'cores: 12') + 'name: by hand\\n'; text.dispatchEvent(new Event('input', { bubbles: true }))");
        browser.type("[data-line='0']", "2").press(Keys.TAB).until(text + ".includes('machines: 2')").until(done);
        browser.click("[aria-label='Without line 2']").until("!" + text + ".includes('line 2')").until(done);
        browser.click("#order a[href='/']").until("document.querySelector('.sum')");
        puts(browser, "line 2");
        browser.click("#ordered a").until(done);
        assertThat(browser.ask("return " + text).toString()).contains("cores: 12", "machines: 2", "\"line 2\":", "name: by hand");
        browser.click("[aria-label='Without line 1']").until("document.querySelector('#fault').textContent === 'The text of this line was changed by hand, so change it there, too.'");
        assertThat(browser.ask("return " + text).toString()).contains("cores: 12");
    }

    @Test
    @InBrowser
    void anOrderWithoutLinesLeavesNothingBehind(Browser browser) {
        withoutOrder(browser).visit(SERVER + "#require.cores=8&require.memory_gb=32").until("document.querySelector('.sum')");
        puts(browser, "line 1");
        browser.click("#ordered a").until("document.querySelector('#progress').textContent === 'Done.'").click("#empty").until("document.querySelector('#order').hidden");
        assertThat(browser.ask("return document.querySelector('#text').value + document.querySelector('#progress').textContent")).isEqualTo("");
        assertThat(browser.ask("return document.querySelector('#result').textContent")).isEqualTo("Nothing has been asked yet.");
    }

    @Test
    void everyKindOfRequestIsAnswered() {
        assertThat(Wire.post(SERVER, "/page/work", YAML, QUOTE).body()).contains("event: answer", "proved: no cheaper valid build exists");
        assertThat(Wire.post(SERVER, "/page/work", YAML, BUILD).body())
                .contains("valid: every rule holds");
        assertThat(Wire.post(SERVER, "/page/work", YAML, "kind: upgrade\nbuild: { platform: WREN-2 }\n").status()).isEqualTo(400);
        assertThat(Wire.post(SERVER, "/page/work", YAML, "kind: wish\n").body()).contains("must be one of quote, build, order, restock, upgrade");
    }

    @Test
    void papersArePdf() {
        Wire.Reply offer = Wire.post(SERVER, "/page/offer", YAML, QUOTE);
        assertThat(offer.status()).as(offer.body()).isEqualTo(200);
        assertThat(offer.head()).contains("Content-Type: application/pdf");
        assertThat(offer.body()).startsWith("%PDF-");
        assertThat(Wire.post(SERVER, "/page/sheet?rank=2", YAML, QUOTE).body()).startsWith("%PDF-");
        assertThat(Wire.post(SERVER, "/page/sheet?rank=two", YAML, QUOTE).body()).contains("\"place\": \"rank\"", "must be a number");
        Wire.Reply none = Wire.post(SERVER, "/page/sheet", YAML, "kind: quote\nrequire: { cores: 9999 }\n");
        assertThat(none.status()).isEqualTo(409);
        assertThat(none.body()).contains("leads to no build that could be put together");
        assertThat(Wire.post(SERVER, "/page/load", YAML, "kind: order\n").body()).contains("must be quote here");
    }

    @Test
    void stalePricesAreNoCustomers(@TempDir Path work) throws IOException {
        Path shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
        Files.writeString(shop.resolve("catalog.yaml"), "house: { stale_after_days: 14 }\n", StandardOpenOption.APPEND);
        try (WebServer server = Servers.start(shop, Servers.ROOMY, new CopyOnWriteArrayList<>())) {
            Wire.Reply refused = Wire.post(server.address(), "/page/offer", YAML, QUOTE);
            assertThat(refused.status()).isEqualTo(409);
            assertThat(refused.body()).contains("older than this shop offers them");
            assertThat(Wire.post(server.address(), "/page/offer?stale-prices", YAML, QUOTE).body()).startsWith("%PDF-");
            Files.writeString(shop.resolve("offers.csv"), "nonsense\n");
            assertThat(Wire.get(server.address(), "/catalogue").body()).contains("Put the faults right first; they stand above.");
        }
    }
}
