package sledwright.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.openqa.selenium.Keys;
import sledwright.browser.Browser;
import sledwright.browser.InBrowser;
import sledwright.browser.ViewChecks;
import sledwright.samples.Folders;
import sledwright.web.Servers;
import sledwright.web.WebServer;
import sledwright.web.Wire;

/** What holds of every view, as other machines of the shop see it: for eyes, keys, listeners, phones, in the dark and on paper. */
@InBrowser
class EveryViewTest {

    private static final String YAML = "application/yaml";
    private static final String QUOTE = "{ kind: quote, name: a node, require: { cores: 8, memory_gb: 32 } }";

    @TempDir
    private static Path folder;
    private static WebServer server;
    private static String address;
    private static String link;

    /** Where a view is, and what shows that it has come. */
    enum View {
        ASK("#require.cores=8&require.memory_gb=32&limit.price=9000&use=H1-10", "document.querySelector('.step') && document.querySelector('.spot')"),
        STUCK("#require.cores=8&limit.price=20", "document.querySelector('.way')"),
        BOARD("board#came=file&file=" + HandPageTest.escaped(HandPageTest.BUILD), "document.querySelector('.place')"),
        QUOTES("book", "document.querySelector('#quotes .entry')"),
        FILES("work", "document.querySelector('#go')"),
        PROMISES("promises", "document.querySelector('#promises-title')"),
        ASKED("asked", "document.querySelector('#asked-title')"),
        STOCK("stock", "document.querySelector('.shelf')"),
        CATALOGUE("catalogue", "document.querySelector('#bring')"),
        CUSTOMER("", "document.querySelector('.compared')");

        private final String path;
        private final String shown;

        View(String path, String shown) {
            this.path = path;
            this.shown = shown;
        }

        void open(Browser browser) {
            browser.visit(this == CUSTOMER ? link : address + path).until(shown);
            switch (this) {
                case QUOTES -> browser.click("#quotes .entry").until("document.querySelector('#paper').textContent.length > 99");
                case FILES -> browser.click("#go").until("document.querySelector('#progress').textContent === 'Done.'");
                default -> browser.ask("document.querySelectorAll('details').forEach(each => { each.open = true })");
            }
        }
    }

    @BeforeAll
    static void start() throws IOException {
        Path shop = Folders.copy(Folders.SHOP, folder.resolve("shop"));
        server = Servers.inTheNetwork(shop, folder.resolve("book.db"));
        address = "http://%s:%s/".formatted(Browser.IN_THE_NETWORK, server.address().getPort());
        assertThat(Wire.post(server.address(), "/api/book?customer=Fenland&by=anna", YAML, QUOTE).status()).isEqualTo(200);
        link = new ObjectMapper().readTree(Wire.post(server.address(), "/api/links?may=require.cores=4..32", YAML, QUOTE).body()).get("address").textValue()
                .replace("http://" + Browser.IN_THE_NETWORK + "/", address);
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    @AfterEach
    void theBrowserHasNothingToComplainOf(Browser browser) {
        // That one is for pages by TLS; where there is none the browser says that it passes it over.
        assertThat(browser.complaints()).filteredOn(said -> !said.contains("The Cross-Origin-Opener-Policy header has been ignored")).isEmpty();
    }

    /** In the reach of keys, of listeners, on a phone, in the dark and on paper. */
    @ParameterizedTest
    @EnumSource
    void nobodyIsHindered(View view, Browser browser) {
        view.open(browser);
        ViewChecks.assertReachedByKeys(browser);
        ViewChecks.assertForEveryone(browser);
        ViewChecks.assertPrintable(browser);
    }

    /** What stands on the screen stays where it is while answers come, also where a long one gives way to a short one; and each change can be taken back. */
    @Test
    void nothingMovesWhileAnswersComeAndEachChangeIsTakenBack(Browser browser) {
        browser.visit(address + "#require.cores=8&require.memory_gb=32").until(View.ASK.shown);
        String first = price(browser);
        browser.ask("window.moved = 0; new PerformanceObserver(list => list.getEntries().forEach(each => { window.moved += each.value })).observe({ type: 'layout-shift' })");
        for (String cores : List.of("16", "9999", "24")) {
            browser.type("[data-path='require.cores']", cores + Keys.ENTER).until("location.hash.includes('cores=" + cores + "')")
                    .until("!document.querySelector('#answer[aria-busy]')").until(cores.equals("9999") ? "document.querySelector('.way')" : "document.querySelector('.step')");
        }
        assertThat(price(browser)).isNotEqualTo(first);
        assertThat(((Number) browser.answer("const done = arguments[arguments.length - 1]; requestAnimationFrame(() => setTimeout(() => done(window.moved)))")).doubleValue())
                .as("share of the screen that moved").isLessThan(0.02);
        browser.click("#undo").until("location.hash.includes('cores=9999')").until("document.querySelector('.way')");
        browser.click("#undo").until("location.hash.includes('cores=16')").click("#undo").until("location.hash.includes('cores=8')");
        browser.until("document.querySelector('.sum').textContent === '" + first + "'").until("document.querySelector('#undo').disabled");
    }

    private static String price(Browser browser) {
        return (String) browser.until("!document.querySelector('#answer[aria-busy]')").ask("return document.querySelector('.sum').textContent");
    }
}
