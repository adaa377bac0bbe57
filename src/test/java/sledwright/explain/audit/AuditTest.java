package sledwright.explain.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.catalog.CatalogReader;
import sledwright.samples.Folders;

/** Each check finds its offender, and nothing else. */
class AuditTest {

    @TempDir
    Path work;
    private Path shop;

    @BeforeEach
    void copyShop() throws IOException {
        shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
    }

    private void add(String file, String text) throws IOException {
        Files.writeString(shop.resolve(file), Files.readString(shop.resolve(file)) + text);
    }

    private void replace(String file, String old, String now) throws IOException {
        String text = Files.readString(shop.resolve(file));
        assertThat(text).contains(old);
        Files.writeString(shop.resolve(file), text.replace(old, now));
    }

    private List<String> warnings(String check) {
        return Audit.of(CatalogReader.readPlaced(shop)).stream().filter(warning -> warning.check().equals(check))
                .map(warning -> warning.toString().replace(work + "/", "")).toList();
    }

    @Test
    void allThatIsOddAboutTheSoundShop() {
        assertThat(Audit.of(CatalogReader.readPlaced(shop))).extracting(Warning::message)
                .containsExactly("no platform takes memory module M128: DDR4 3DS with 2 ranks.");
    }

    @Test
    void stockThatIsSoldBelowItsCost() throws IOException {
        add("offers.csv", "M16,C1,Fen Surplus,used,12.24,1,5,2,12.25\nM16,C2,Fen Surplus,used,12.25,1,5,2,12.25\nM16,C3,Fen Surplus,used,1,1,0,2,12.25\n"
                + "M16,C4,Fen Surplus,used,30,1,50,2,12.25\nM16,C4,Fen Surplus,used,11,20,50,2,12.25\nM16,C5,Fen Surplus,used,1,1,5,2,\n");
        assertThat(warnings("below-cost")).containsExactly(
                "shop/offers.csv:14: lot C1 sells M16 at 12.24 EUR, below its cost of 12.25.",
                "shop/offers.csv:18: lot C4 sells M16 at 11.00 EUR, below its cost of 12.25.");
    }

    @Test
    void aPartThatNoPlatformTakesAndItsStock() throws IOException {
        add("processors.csv", "X1-04,,XS9,Heath 1,4,4,2,2,65,2400,,1,\n");
        add("memory.csv", "M04,,DDR3,RDIMM,4,1,,8,1600,1.5,3\nM4E,,DDR4,UDIMM,4,1,,8,2400,1.2,3\n");
        add("offers.csv", "X1-04,B1,Marsh Trade,used,5,1,9,,\nX1-04,B1,Marsh Trade,used,4,5,9,,\nM04,B2,Marsh Trade,used,5,1,0,,\n");
        assertThat(warnings("no-platform")).containsExactly(
                "shop/memory.csv:5: no platform takes memory module M128: DDR4 3DS with 2 ranks.",
                "shop/memory.csv:6: no platform takes memory module M04: DDR3 RDIMM with 1 ranks.",
                "shop/memory.csv:7: no platform takes memory module M4E: DDR4 UDIMM with 1 ranks.",
                "shop/processors.csv:5: no platform takes processor X1-04: socket XS9, generation Heath 1, 65 W.");
        assertThat(warnings("unusable-offer")).as("a lot once, stock of nothing not at all").containsExactly(
                "shop/offers.csv:14: lot B1 offers 9 of X1-04, which no platform takes.");
    }

    @Test
    void aPlatformWithoutAnOffer() throws IOException {
        replace("offers.csv", "REED-S,A2,Marsh Trade,used,150,1,9,0,\n", "");
        assertThat(warnings("unsold-platform")).containsExactly(
                "shop/platforms/reed-sled.yaml:1: platform REED-S has no offer, so no machine of it can be sold.");
    }

    @Test
    void aPlatformWithoutAKit() throws IOException {
        replace("offers.csv", "WREN-HS-1,A9,Marsh Trade,used,9,1,30,0,2\n", "");
        replace("offers.csv", "WREN-HS-2,A10,Marsh Trade,used,15,1,30,0,4\n", "");
        assertThat(warnings("unsold-platform")).containsExactly(
                "shop/platforms/reed-sled.yaml:1: no heat sink kit of platform REED-S has an offer, so no machine of it can be sold.",
                "shop/platforms/wren-2.yaml:1: no heat sink kit of platform WREN-2 has an offer, so no machine of it can be sold.");
    }

    @Test
    void aSpeedTableWithAHole() throws IOException {
        add("memory.csv", "M16Q,,DDR4,RDIMM,16,16,,8,2400,1.2,5\n");
        assertThat(warnings("speed-hole")).isNotEmpty().allMatch(warning -> warning.endsWith("has no row for RDIMM with 16 ranks, which modules of the catalogue carry."));
    }

    @Test
    void aSpeedTableThatRises() throws IOException {
        String platform = Files.readString(shop.resolve("platforms/wren-2.yaml"));
        Files.writeString(shop.resolve("platforms/wren-2.yaml"), platform.replaceFirst("mts: \\[(\\d+), (\\d+)", "mts: [2133, 2400"));
        assertThat(warnings("speed-hole")).containsExactly("shop/platforms/wren-2.yaml:1: the speed table of WREN-2 has RDIMM faster with more modules on the channel: 2133, 2400.");
    }

    @Test
    void aLotThatIsOverIsNotSold() throws IOException {
        replace("offers.csv", "unit_cost", "unit_cost,valid_until");
        Files.writeString(shop.resolve("offers.csv"), Files.readAllLines(shop.resolve("offers.csv")).stream()
                .map(line -> line.startsWith("M16,A6") ? line + ",2025-03-30" : line.startsWith("M16,A7") ? line + ",2025-03-31"
                        : line.endsWith("valid_until") ? line : line + ",").collect(Collectors.joining("\n")));
        assertThat(warnings("lot-over")).containsExactly(
                "shop/offers.csv:7: lot A6 of M16 was valid until 2025-03-30 and is not sold on 2025-03-31.");
        assertThat(CatalogReader.read(shop).lots("M16")).extracting(lot -> lot.lot()).containsExactly("A7");
    }

    @Test
    void namesThatDifferOnlyByCase() throws IOException {
        add("memory.csv", "m16,,DDR4,RDIMM,16,2,,4,2666,1.2,4\n");
        add("offers.csv", "M16,a6,MARSH TRADE,used,21,1,9,,\nM64,a6,Fen Surplus,used,21,1,9,,\n");
        assertThat(warnings("case-twins")).containsExactly(
                "shop/memory.csv:6: part numbers that differ only by case: M16, m16.",
                "shop/offers.csv:14: suppliers that differ only by case: Marsh Trade, MARSH TRADE.",
                "shop/offers.csv:14: lots of M16 that differ only by case: A6, a6.");
    }

    @Test
    void aPriceFarFromItsLike() throws IOException {
        // Per GB: 0.95 to 1.05, one of 3.2 and one of 0.3; the second-hand lot A6 of 1.34 is among them, the new one is not.
        StringBuilder lots = new StringBuilder();
        List<String> prices = List.of("15.20", "15.60", "16", "16.20", "16.50", "16.80", "16.10", "15.90");
        for (int i = 0; i < prices.size(); i++) {
            lots.append("M16,C%d,Marsh Trade,used,%s,1,9,,\n".formatted(i, prices.get(i)));
        }
        lots.append("M16,C8,Marsh Trade,used,160,1,9,,\nM16,C8,Marsh Trade,used,1,4,9,,\nM16,C9,Marsh Trade,used,1.60,1,9,,\nM16,D1,Marsh Trade,used,0,1,9,,\n");
        add("offers.csv", lots.toString());
        assertThat(warnings("price-off-trend")).containsExactly(
                "shop/offers.csv:22: lot C8 sells M16 at 10.000 EUR a GB; the median of 11 like lots (memory, DDR4 RDIMM of 16 GB, second-hand) is 1.006: "
                        + "is the price right?",
                "shop/offers.csv:24: lot C9 sells M16 at 0.100 EUR a GB; the median of 11 like lots (memory, DDR4 RDIMM of 16 GB, second-hand) is 1.006: "
                        + "is the price right?",
                "shop/offers.csv:25: lot D1 sells M16 for nothing.");
    }

    @Test
    void aProcessorFarFromItsLike() throws IOException {
        StringBuilder lots = new StringBuilder();
        for (int i = 0; i < 8; i++) {
            lots.append("H1-08,C%d,Marsh Trade,used,%d,1,9,,\n".formatted(i, 22 + i % 2));
        }
        add("offers.csv", lots + "H1-08,C9,Marsh Trade,used,400,1,9,,\n");
        assertThat(warnings("price-off-trend")).containsExactly("shop/offers.csv:22: lot C9 sells H1-08 at 2.100 EUR a unit of throughput; "
                + "the median of 11 like lots (processors, Heath 1, second-hand) is 0.121: is the price right?");
    }

    @Test
    void aMedianOfAnEvenNumberLiesBetweenTheMiddleOnes() {
        assertThat(PricesOffTrend.median(List.of(3.0, 1.0, 2.0))).isEqualTo(2);
        assertThat(PricesOffTrend.median(List.of(4.0, 1.0, 2.0, 3.0))).isEqualTo(2.5);
    }
}
