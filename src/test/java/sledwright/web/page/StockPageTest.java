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
                    "Lies dead: nothing that is sold takes it, or its lot is over", "Z9-99", "What is here, and what suppliers have", "What a unit more is worth, and what to buy, is answered by a",
                    "Least each", "Elsewhere", "Platforms", "Processors", "Memory modules", "Heat sinks", "Power supplies");
            assertThat(browser.ask("return document.querySelector('tr.dead .sku').textContent")).isEqualTo("Z9-99");
            assertThat(browser.barriers()).isEmpty();
            Files.writeString(shop.resolve("offers.csv"), "nonsense\n");
            assertThat(Wire.get(server.address(), "/stock").body()).contains("Put the catalogue's faults right first; they stand above.");
            assertThat(HtmlValidity.faults(Wire.get(server.address(), "/stock").body())).isEmpty();
        }
    }
}
