package sledwright.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.time.Year;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import sledwright.browser.Browser;
import sledwright.browser.InBrowser;
import sledwright.samples.Folders;
import sledwright.web.Servers;
import sledwright.web.WebServer;
import sledwright.web.Wire;

/** Pages that were open when their server was stopped or started anew. */
@InBrowser
class StoppedServerTest {

    private static final String GONE = "The server does not answer. Is it still running?";
    private static final String PLAIN = "#require.cores=8&require.memory_gb=32";
    private static final String ANSWERED = "document.querySelector('#answer .sum') && !document.querySelector('#answer[aria-busy]')";
    private static final String FIRST = Year.now().getValue() + "-0001";

    @TempDir
    Path work;

    private WebServer server;
    private URI address;

    @BeforeEach
    void open() {
        server = Servers.start(Folders.SHOP, work.resolve("book.db"), Optional.empty(), Servers.ROOMY, new CopyOnWriteArrayList<>());
        address = server.address();
    }

    @AfterEach
    void close(Browser browser) {
        server.close();
        // What this server refused is nothing for the tests that come after.
        browser.complaints();
    }

    /** Waits until the page says that the server does not answer, and nothing went wrong unseen. */
    private static void says(Browser browser, String selector) {
        browser.until("document.querySelector('" + selector + "').textContent === '" + GONE + "'");
        assertThat(browser.complaints()).as(selector).noneMatch(line -> line.contains("Uncaught"));
    }

    @Test
    void noPriceStaysOfAWishThatWasNotAnswered(Browser browser) {
        browser.visit(address + PLAIN).until(ANSWERED).screen(Browser.PHONE, false).ask("scrollTo(0, 0)");
        browser.until("document.querySelector('#brief').textContent.includes('Proved')").until("document.querySelector('#said').textContent.includes('Proved')");
        server.close();
        browser.type("[data-path='require.cores']", "16");
        says(browser, "#answer .note");
        assertThat(browser.ask("return document.querySelector('#brief').hidden + document.querySelector('#brief').textContent")).isEqualTo("true");
        browser.until("document.querySelector('#said').textContent === '" + GONE + "'");
    }

    @Test
    void whatIsDoneWithAnAnswerSaysThatNobodyIsThere(Browser browser) {
        browser.visit(address + PLAIN).until(ANSWERED).until("document.querySelector('#chart svg')");
        server.close();
        browser.click("[data-do=board]");
        says(browser, ".inside .board");
        browser.ask("document.querySelector('.inside .board').replaceChildren()");
        browser.click("[data-paper=offer]");
        says(browser, ".inside .board");
        browser.upload("#file", Path.of("scenarios/small-web-node.yaml"));
        says(browser, "#load-fault");
    }

    @Test
    void theBookAndTheBenchSayThatNobodyIsThere(Browser browser) throws IOException {
        Wire.post(address, "/api/book?customer=Orchard", "application/yaml", "kind: quote\nrequire: { cores: 8 }\n");
        browser.visit(address + "book#" + FIRST).until("document.querySelector('#paper').textContent.includes('proved')").until("document.querySelector('.entry')");
        server.close();
        browser.click("#reopen");
        says(browser, "#fault");
        browser.ask("document.querySelector('#fault').textContent = ''");
        browser.click(".entry");
        says(browser, "#fault");
        browser.ask("document.querySelector('#fault').textContent = ''; document.querySelector('#version').dispatchEvent(new Event('change'))");
        says(browser, "#fault");
        server = Servers.instead(address, Folders.SHOP, work.resolve("book.db"));
        browser.visit(address + "work").until("document.querySelector('#sheet')");
        server.close();
        browser.click("#sheet");
        says(browser, "#fault");
    }

    @Test
    void whoIsNotToldThatAQuoteWasKeptKeepsNoSecondOne(Browser browser) throws IOException {
        browser.visit(address + PLAIN).until(ANSWERED);
        browser.ask("const real = fetch; window.fetch = async (at, ...more) => { const reply = await real(at, ...more); if (!at.startsWith('/api/book?')) { return reply; }"
                + " window.fetch = real; throw new TypeError('lost'); }");
        browser.type("#keep-customer", "Orchard").press(Keys.ENTER);
        says(browser, "#keep-fault");
        assertThat(Wire.get(address, "/api/book").body()).contains(FIRST);
        browser.press(Keys.ENTER).until("document.querySelector('#kept a').textContent === '" + FIRST + "'");
        assertThat(Wire.get(address, "/api/book").body()).doesNotContain("-0002");
        // Something else is another quote.
        browser.type("#keep-note", "by word").press(Keys.ENTER).until("document.querySelector('#kept a') && document.querySelector('#kept a').textContent.endsWith('-0002')");
    }

    @Test
    void anOpenPageKeepsOnAfterItsServerWasStartedAnew(Browser browser) throws IOException {
        browser.visit(address + PLAIN).until(ANSWERED);
        server.close();
        server = Servers.instead(address, Folders.SHOP, work.resolve("book.db"));
        browser.type("#keep-customer", "Orchard").press(Keys.ENTER).until("document.querySelector('#kept a')");
        assertThat(browser.ask("return document.querySelector('#keep-fault').textContent")).isEqualTo("");
        assertThat(Wire.get(address, "/api/book").body()).contains(FIRST).doesNotContain("-0002");
    }
}
