package sledwright.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.browser.Browser;
import sledwright.browser.HtmlValidity;
import sledwright.browser.InBrowser;
import sledwright.samples.Folders;
import sledwright.web.Servers;
import sledwright.web.WebServer;
import sledwright.web.Wire;

/** What stands on the shelf. */
class StockPageTest {

    /** Two machines were bought; what suppliers offer comes as a table. */
    @Test
    @InBrowser
    void aPlanIsWrittenFromTheBookAndAnsweredWithItsProgress(Browser browser, @TempDir Path work) throws IOException {
        Path shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
        Path supply = Files.writeString(work.resolve("offers of spring.csv"), "sku;supplier;unit_cost;available\nWREN-2;Fen Surplus;180,50;20\nH1-08;Fen Surplus;9;60\n");
        try (WebServer server = Servers.start(shop, Servers.ROOMY, new CopyOnWriteArrayList<>())) {
            Wire.post(server.address(), "/api/book?customer=Orchard", "application/yaml", "kind: quote\nname: two of them\nmachines: 2\nrequire: { cores: 8, memory_gb: 32 }\n");
            Wire.post(server.address(), "/api/book/2026-0001/send", "application/yaml", "");
            Wire.post(server.address(), "/api/book/2026-0001/accept", "application/yaml", "");
            browser.visit(server.address() + "stock").upload("#supply", supply).type("#months", "1").type("#horizon", "2").type("#budget", "900").click("#from-book button")
                    .until("document.querySelector('#plan').value.includes('price_accepted')");
            String plan = (String) browser.ask("return document.querySelector('#plan').value");
            assertThat(plan).contains("\"unit_cost\": \"180.50\"", "budget: \"900\"", "horizon_months: 2", "demand: { months: [1] }").doesNotContain("catalog:");
            browser.type("#plan", plan + "samples: 9\n").click("#go").until("document.querySelector('#fault').textContent.includes('samples')");
            browser.type("#plan", plan + "samples: 10\n").click("#go").until("document.querySelector('#progress').textContent === 'Done.'");
            assertThat(browser.text()).contains("What to buy, and what one more of each part is worth", "From what was asked for in the last", "What suppliers offer (CSV or XLSX)", "Write the plan", "The plan, as YAML", "what to stock for 2 months. Expected margin: ", "of \u20ac900.00", "Parts in use",
                    "Dead stock", "Orders filled", "Expected margin by budget", "if nothing is bought; ");
            assertThat(browser.ask("return document.querySelectorAll('#planned svg.chart').length")).isEqualTo(2L);
            assertThat(browser.text()).contains("what to stock for 2 months. Expected margin: \u20ac758.00 \u00b1 \u20ac0.00 with the plan, \u20ac296.00 \u00b1 \u20ac0.00 if nothing is bought; \u20ac462.00 \u00b1 \u20ac0.00 more.");
            browser.ask("document.querySelectorAll('#planned details').forEach(each => { each.open = true })");
            assertThat(browser.text()).contains("One more, EUR", "Pay at most, EUR");
            assertThat(browser.barriers()).isEmpty();
            browser.screen(Browser.PHONE, true);
            assertThat(browser.barriers()).isEmpty();
            assertThat(browser.sidewaysScroll()).isZero();
            browser.type("#plan", plan + "samples: 9\n").click("#go").until("document.querySelector('#fault').textContent.includes('samples')");
            assertThat(browser.ask("return document.querySelector('#planned').childNodes.length")).as("what is left of the plan before").isEqualTo(0L);
            browser.complaints();
            String streamed = Wire.post(server.address(), "/page/plan", "application/yaml", plan + "samples: 10\n").body();
            assertThat(streamed).contains("event: progress", "\"doing\": \"", "event: answer");
            assertThat(HtmlValidity.faults(Wire.get(server.address(), "/stock").body())).isEmpty();
            Wire.Reply none = Wire.post(server.address(), "/page/demand?months=1&horizon=1&name=list.csv", "text/csv", "sku\n");
            assertThat(none.status()).isEqualTo(200);
            Wire.post(server.address(), "/api/book/2026-0001/decline", "application/yaml", "");
            none = Wire.post(server.address(), "/page/demand?months=1&horizon=1&name=list.csv", "text/csv", "sku\n");
            assertThat(none.status()).isEqualTo(400);
            assertThat(none.body()).contains("There is nothing to plan from: nobody has bought anything of which it is known what one costs.");
            Wire.Reply wrong = Wire.post(server.address(), "/page/demand?months=1&horizon=1&name=list.pdf", "text/csv", "sku\n");
            assertThat(wrong.status()).isEqualTo(400);
            assertThat(wrong.body()).contains("must end in .xlsx, .csv, .tsv or .txt");
            assertThat(Wire.post(server.address(), "/page/demand?months=1&horizon=0&name=list.csv", "text/csv", "sku\n").body())
                    .contains("\"place\": \"horizon\"", "must be a whole number of months from 1 to 120");
        }
    }

    /** Of the sample shop, Fen Surplus is made its own shelf: 3 x H2-16 at 240, 60 x M16 at 21.50. */
    @Test
    @InBrowser
    void whatIsHereIsAddedUp(Browser browser, @TempDir Path work) throws IOException {
        Path shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
        Files.writeString(shop.resolve("catalog.yaml"), "own_suppliers: [Fen Surplus]\n", StandardOpenOption.APPEND);
        Files.writeString(shop.resolve("processors.csv"), "Z9-99,\"nothing takes it\",Q9,Harrier 1,8,16,2,2.5,100,2400,512,2,100\n", StandardOpenOption.APPEND);
        Files.writeString(shop.resolve("offers.csv"), "Z9-99,L9,Fen Surplus,used,10,1,2,0,\n", StandardOpenOption.APPEND);
        try (WebServer server = Servers.start(shop, Servers.ROOMY, new CopyOnWriteArrayList<>())) {
            browser.visit(server.address() + "stock").until("document.querySelector('.shelf')");
            browser.ask("document.querySelectorAll('details').forEach(each => { each.open = true })");
            assertThat(browser.text()).contains("65 units on our own shelf", "They bring \u20ac2,030.00 at the prices of single units of 31 March 2025 and cost \u20ac1,275.00; of 2 units the cost is not known. What the book keeps for somebody is not among them.",
                    "Lies dead: nothing that is sold takes it, or its lot is over", "Z9-99", "What is here, and what suppliers have", "Bars: what each kind brings beside the others, filled as far as it cost.", "Columns of the table: sku, supplier, unit_cost, available; also min_quantity, lead_days, condition.",
                    "Least each", "Elsewhere", "Platforms", "Processors", "Memory modules", "Heat sinks", "Power supplies");
            assertThat(browser.ask("return document.querySelector('tr.dead .sku').textContent")).isEqualTo("Z9-99");
            assertThat((String) browser.ask("return document.querySelector('.stuck li').textContent")).startsWith("No platform takes card NET-2X10");
            assertThat(browser.barriers()).isEmpty();
            Files.writeString(shop.resolve("offers.csv"), "nonsense\n");
            assertThat(Wire.get(server.address(), "/stock").body()).contains("Put the catalogue's faults right first; they stand above.");
            assertThat(HtmlValidity.faults(Wire.get(server.address(), "/stock").body())).isEmpty();
        }
    }
}
