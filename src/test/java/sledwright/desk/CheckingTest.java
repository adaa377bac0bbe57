package sledwright.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.desk.view.CheckView;
import sledwright.input.Source;
import sledwright.samples.Folders;

/** Builds of sleds that are judged with the enclosures that are bought for them. */
class CheckingTest {

    private static final Path YARD = Path.of("catalogs/heronfold-yard");

    private static final String SLED = """
            kind: build
            platform: FINCH-S4
            processor: S2-18X
            processors: 1
            cooling: FINCH-S4-HS86
            modules: { 1A1: QM4R4-18-24 }
            """;

    @TempDir
    private Path folder;

    private static CheckView check(Path shop, String text, String... sets) {
        return ((Reply.Answered<CheckView>) Desk.at(shop).check(Source.of("a build", text.getBytes(StandardCharsets.UTF_8)), List.of(sets))).answer();
    }

    private static List<String> broken(CheckView view) {
        return view.violations().stream().map(violation -> violation.rule() + " " + violation.where()).toList();
    }

    /** The yard, where one enclosure of one supply option alone takes the sled. */
    private Path shop(int budgetW) throws IOException {
        Path shop = Folders.copy(YARD, folder.resolve("shop"));
        for (String other : List.of("finch-e4", "finch-e8")) {
            Path file = shop.resolve("enclosures").resolve(other + ".yaml");
            Files.writeString(file, Files.readString(file).replace("[FINCH-S2, FINCH-S4]", "[FINCH-S2]"));
        }
        Files.writeString(shop.resolve("enclosures/finch-e8q.yaml"), """
                sku: FINCH-E8Q
                takes: [FINCH-S4]
                bays: 8
                power:
                  base_w: 225
                  budget_w: %d
                  supplies:
                    - { sku: PS-1600P-4, count: 4, redundant: 2, watts: 1600, low_line_watts: 900,
                        efficiency: { 10: 85, 20: 90, 50: 94, 100: 91 } }
                """.formatted(budgetW));
        return shop;
    }

    @Test
    void newEnclosuresAreInThePriceAndOwnOnesAreNot() {
        assertThat(check(YARD, SLED).build().price()).hasValue(new BigDecimal("214.44"));
        assertThat(check(YARD, SLED, "enclosure=own").build().price()).hasValue(new BigDecimal("214.44"));
        CheckView bought = check(YARD, SLED, "enclosure=new");
        assertThat(bought.valid()).isTrue();
        assertThat(bought.build().price()).hasValue(new BigDecimal("389.44"));
        assertThat(bought.build().lines()).filteredOn(line -> line.sku().startsWith("FINCH-E") || line.sku().startsWith("FINCH-PS"))
                .extracting(line -> line.quantity() + " x " + line.sku()).containsExactly("1 x FINCH-E4", "2 x FINCH-PS-1400");
    }

    @Test
    void theirPriceCountsForTheBudget() {
        assertThat(check(YARD, SLED, "enclosure=new", "limit.price=389.44").valid()).isTrue();
        assertThat(broken(check(YARD, SLED, "enclosure=new", "limit.price=389.43"))).containsExactly("budget ");
    }

    /** The sled loads 193 W. */
    @Test
    void anEnclosureThatCannotFeedOneSledIsBroken() throws IOException {
        Path shop = shop(417);
        CheckView weak = check(shop, SLED, "enclosure=new");
        assertThat(broken(weak)).containsExactly("enclosure-power FINCH-E8Q");
        assertThat(check(shop, SLED, "enclosure=own").valid()).isTrue();
    }

    @Test
    void anEnclosureThatComesTooLateOrIsNotInStockIsSaid() throws IOException {
        Path shop = shop(0);
        assertThat(broken(check(shop, SLED, "enclosure=new", "limit.conditions=[used]"))).contains("condition FINCH-E8Q");
        assertThat(broken(check(shop, SLED, "enclosure=new", "machines=200"))).contains("in-stock FINCH-E8Q");
    }
}
