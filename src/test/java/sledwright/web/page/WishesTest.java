package sledwright.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sledwright.catalog.CatalogReader;
import sledwright.report.page.Pages;
import sledwright.samples.Folders;
import sledwright.web.Servers;
import sledwright.web.Wire;

class WishesTest {

    @Test
    void thePageSaysWhyItsCatalogueIsNotTheNewest() {
        String page = Pages.filled("ask.ftlh", Map.of("shop", "Reedmere", "here", "ask", "who", "", "token", "", "may", List.of(), "links", false, "keeps", false, "groups", List.of(), "parts", List.of(), "faults", List.of("offers.csv:4: <cheap>")));
        assertThat(page).contains("The catalogue's files have faults, so answers come from the catalogue as it was before:", "offers.csv:4: &lt;cheap&gt;");
    }

    @Test
    void aShopThatKnowsWorkloadsOffersThem() {
        Wish first = Wishes.of(CatalogReader.read(Path.of("catalogs/heronfold-yard"))).get(0).wishes().get(0);
        assertThat(first.key()).isEqualTo("workload");
        assertThat(first.choices()).contains(new Wish.Choice("web-serving", "web serving"));
        assertThat(first.hint()).isEqualTo("What the machine does: how far its work runs side by side, and how much memory it reads.");
    }

    static List<Wish> wishes() {
        return Wishes.of(CatalogReader.read(Folders.SHOP)).stream().flatMap(group -> group.wishes().stream()).toList();
    }

    @ParameterizedTest
    @MethodSource("wishes")
    void everyWishIsAKeyThatRequestsHave(Wish wish) {
        String value = switch (wish.shape()) {
            case FIGURE -> "1";
            case TEXT -> wish.key().equals("limit.by") ? "2199-01-01" : "x";
            case LINES -> "[Fen Survey, Dyke 2]";
            case CHOICE, SEVERAL -> wish.choices().get(0).value();
            case PARTS -> "M16";
            case UNITS -> "M16=1";
            case VOLUME -> "[{name: a, usable_gb: 1, level: 1, kind: any, interface: any, hot_spares: 0}]";
            case CARD -> "[{kind: network, ports: 1, port_gbit: 1, count: 1}]";
        };
        String set = wish.shape() == Wish.Shape.UNITS ? wish.key() + "." + (wish.key().equals("extras") ? "RAILS=1" : value)
                : wish.key() + "=" + (List.of(Wish.Shape.SEVERAL, Wish.Shape.PARTS).contains(wish.shape()) ? "[" + value + "]" : value);
        Wire.Reply reply = Wire.post(Servers.small().address(), "/api/quote?set=" + URLEncoder.encode(set, StandardCharsets.UTF_8),
                "application/json", wish.key().startsWith("energy.") ? "{\"kind\": \"quote\", \"energy\": {\"years\": 4, \"price_per_kwh\": 0.3}}" : "{\"kind\": \"quote\"}");
        assertThat(reply.status()).as(set + reply.body()).isEqualTo(200);
    }
}
