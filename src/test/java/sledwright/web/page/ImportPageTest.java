package sledwright.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.browser.Browser;
import sledwright.browser.HtmlValidity;
import sledwright.browser.InBrowser;
import sledwright.samples.Folders;
import sledwright.web.Servers;
import sledwright.web.WebServer;
import sledwright.web.Wire;

/** Suppliers' lists on the page. */
class ImportPageTest {

    private static final String LIST = "sku,lot,unit_price,supplier,condition,available\nM16,A7,41.50,,,\nM16,Z1,20,Fen Surplus,used,8\n";

    @TempDir
    Path work;

    private Path offers;
    private WebServer server;
    private URI address;

    @BeforeEach
    void open() throws IOException {
        Path shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
        offers = shop.resolve("offers.csv");
        server = Servers.start(shop, Servers.ROOMY, new CopyOnWriteArrayList<>());
        address = server.address();
    }

    @AfterEach
    void close() {
        server.close();
    }

    private Wire.Reply bring(String path, String list, String... more) throws IOException {
        Map<String, Object> body = new LinkedHashMap<>(Map.of("table", "offers", "name", "../prices.csv", "mapping", "", "sheet", "",
                "list", Base64.getEncoder().encodeToString(list.getBytes(StandardCharsets.UTF_8))));
        for (int i = 0; i < more.length; i += 2) {
            body.put(more[i], more[i + 1]);
        }
        return Wire.post(address, path, "application/json", new ObjectMapper().writeValueAsString(body));
    }

    private static String seen(String piece) {
        Matcher found = Pattern.compile("data-seen=\"([0-9a-f]{64})\"").matcher(piece);
        assertThat(found.find()).as(piece).isTrue();
        return found.group(1);
    }

    @Test
    void whatWasSeenIsWrittenOrNothing() throws IOException {
        String before = Files.readString(offers);
        String piece = bring("/page/import", LIST).body();
        assertThat(piece).contains("Nothing is written yet", ".._prices.csv into offers.csv", "1 added; 1 changed; 0 unchanged; 0 not taken.", "<del>44</del>", "<ins>41.50</ins>", "Write it");
        assertThat(Files.readString(offers)).isEqualTo(before);
        assertThat(bring("/page/import/apply", LIST, "seen", "other").status()).isEqualTo(409);
        assertThat(bring("/page/import/apply", LIST.replace("41.50", "40"), "seen", seen(piece)).body())
                .contains("changes something else now than when it was looked at, for the catalogue has changed meanwhile; look again");
        assertThat(Files.readString(offers)).isEqualTo(before);
        assertThat(bring("/page/import/apply", LIST, "seen", seen(piece)).body()).contains("Written into offers.csv; the file as it was is kept as offers.csv.bak");
        assertThat(Files.readString(offers)).contains("41.50", "Z1").isNotEqualTo(before);
        assertThat(bring("/page/import", LIST).body()).contains("Nothing to write").doesNotContain("data-seen");
    }

    @Test
    void whatCannotBeTakenIsSaid() throws IOException {
        String faulty = LIST + "M17,Z2,20,Fen Surplus,used,8\n";
        String piece = bring("/page/import", faulty).body();
        assertThat(piece).contains("Not taken", "M17", "Write the rows that can be taken", "1 not taken");
        assertThat(bring("/page/import/apply", faulty, "seen", seen(piece)).body()).as("not without being told to").contains("Nothing is written yet");
        assertThat(bring("/page/import", LIST, "table", "staff").body()).contains("must be one of offers, memory, processors");
        assertThat(bring("/page/import", LIST, "list", "?").body()).contains("must be JSON with table, name, list in base 64, mapping and sheet");
        assertThat(bring("/page/import", LIST, "mapping", "columns: 7").body()).contains("the mapping");
        assertThat(bring("/page/import", LIST, "name", "prices.pdf").status()).isEqualTo(400);
        assertThat(Wire.post(address, "/page/import", "application/json", "[").status()).isEqualTo(400);
    }

    @Test
    @InBrowser
    void aListIsLookedAtAndWritten(Browser browser) throws IOException {
        Path list = Files.writeString(work.resolve("prices.csv"), LIST);
        browser.visit(address + "catalogue").upload("#list", list).click("#bring button").until("document.querySelector('#apply')");
        assertThat(browser.text()).contains("Nothing is written yet", "41.50", "20");
        assertThat(browser.barriers()).isEmpty();
        browser.click("#apply").until("document.querySelector('#moves .seal').textContent.startsWith('Written into offers.csv')");
        assertThat(Files.readString(offers)).contains("41.50");
        browser.screen(Browser.PHONE, true);
        assertThat(browser.barriers()).isEmpty();
        assertThat(browser.sidewaysScroll()).isZero();
        assertThat(Wire.get(address, "/catalogue").body()).contains("A supplier's list", "List (XLSX or CSV)", "Goes into",
                "Which of its columns is which of ours, as YAML; empty: it has our headings", "See what it changes", "Open a mapping", "A mapping as YAML");
        assertThat(HtmlValidity.faults(Wire.get(address, "/catalogue").body())).isEmpty();
    }
}
