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
                .containsExactly("no platform takes card NET-2X10: no slot has 8 lanes of PCI Express generation 3 and takes low height, 168 mm and 11 W.",
                "no platform takes card CTL-8: no slot has 8 lanes of PCI Express generation 3 and takes low height, 168 mm and 13 W.",
                "no platform takes drive SSD-480: no bay takes 2.5 drives with SATA.",
                "no platform takes drive HDD-4T: no bay takes 3.5 drives with SAS.",
                "no platform takes memory module M128: DDR4 3DS with 2 ranks.",
                "no enclosure that takes REED-S has an offer together with one of its supplies, so it can only be sold to customers who have one.");
    }

    /** What the two drives and two cards of the shop go into. */
    private static final String BAYS = """

            storage:
              bays:
                - { name: front, count: 8, form_factors: ["2.5"], interfaces: [SATA] }
                - { name: rear, count: 2, form_factors: ["3.5"], interfaces: [SAS], socket: 2 }
              onboard: { drive_interfaces: [SATA], drive_ports: 6 }
            slots:
              - { name: X1, lanes: 8, pcie_generation: 3, height: low, length_mm: 168, max_w: 25, socket: 2, riser: RISER-2 }
            needs:
              - { processors: 2, parts: { FANS-2: 1 } }
              - { empty_sockets: 1, parts: { BLANK: 1 } }
            """;

    private void addBays(String bays) throws IOException {
        add("platforms/wren-2.yaml", bays);
        add("extras.csv", "BLANK,,\nRISER-2,,\n");
    }

    private void addOffers(String... skus) throws IOException {
        for (String sku : skus) {
            add("offers.csv", "%s,N1,Marsh Trade,used,5,1,9,,\n".formatted(sku));
        }
    }

    @Test
    void aDriveThatNoBayTakesOrNothingDrivesAndACardThatNoSlotTakes() throws IOException {
        addBays(BAYS);
        add("drives.csv", "HDD-S,,hdd,SATA,3.5,4000,8,,,\n");
        add("cards.csv", "ACC-1,,accelerator,3,8,full,168,25,,,,,\n");
        addOffers("HDD-S", "ACC-1");
        assertThat(warnings("no-platform")).containsExactly(
                "shop/cards.csv:4: no platform takes card ACC-1: no slot has 8 lanes of PCI Express generation 3 and takes full height, 168 mm and 25 W.",
                "shop/drives.csv:4: no platform takes drive HDD-S: no bay takes 3.5 drives with SATA.",
                "shop/memory.csv:5: no platform takes memory module M128: DDR4 3DS with 2 ranks.");
        assertThat(warnings("unusable-offer")).containsExactly("shop/offers.csv:14: lot N1 offers 9 of HDD-S, which no platform takes.",
                "shop/offers.csv:15: lot N1 offers 9 of ACC-1, which no platform takes.");
        assertThat(warnings("dead-place")).isEmpty();
    }

    /** What only goes with platforms of which nobody has any; the sample shop has four WREN-2. */
    @Test
    void heatSinksSuppliesAndExtrasWithoutAPlatform() throws IOException {
        addBays(BAYS);
        addOffers("RISER-2", "BLANK");
        assertThat(warnings("idle-companion")).isEmpty();
        replace("offers.csv", "WREN-2,A1,Marsh Trade,used,310.00,1,4,0,220.00", "WREN-2,A1,Marsh Trade,used,310.00,1,0,0,220.00");
        assertThat(warnings("idle-companion")).as("the others go with REED-S, too").containsExactly(
                "shop/offers.csv:12: lot A10 offers 30 of WREN-HS-2, which only goes with WREN-2, of which nobody has any.",
                "shop/offers.csv:14: lot N1 offers 9 of RISER-2, which only goes with WREN-2, of which nobody has any.",
                "shop/offers.csv:15: lot N1 offers 9 of BLANK, which only goes with WREN-2, of which nobody has any.");
    }

    @Test
    void baysThatNothingDrives() throws IOException {
        addBays(BAYS.replace("lanes: 8", "lanes: 4"));
        assertThat(warnings("no-platform")).contains(
                "shop/drives.csv:3: no platform takes drive HDD-4T: in WREN-2 with such bays, neither the board nor a controller that fits drives SAS.");
        assertThat(warnings("dead-place")).containsExactly(
                "shop/platforms/wren-2.yaml:1: bays rear of WREN-2: neither the board nor a controller that fits drives SAS.");
    }

    @Test
    void placesOfASocketThatIsNeverFitted() throws IOException {
        addBays(BAYS);
        replace("platforms/wren-2.yaml", "counts: [1, 2]", "counts: [1], sockets: 2");
        assertThat(warnings("dead-place")).containsExactly(
                "shop/platforms/wren-2.yaml:1: bays rear of WREN-2: socket 2 is never fitted, since the platform runs with at most 1 processor.",
                "shop/platforms/wren-2.yaml:1: slot X1 of WREN-2: socket 2 is never fitted, since the platform runs with at most 1 processor.",
                "shop/platforms/wren-2.yaml:1: bays rear of WREN-2: neither the board nor a controller that fits drives SAS.");
    }

    @Test
    void whatMustComeWithAPlatformAndIsNotSold() throws IOException {
        addBays(BAYS.replace("needs:", """
              - { name: X2, lanes: 8, pcie_generation: 3, height: low, length_mm: 168, max_w: 25, riser: RISER-1 }
              - { name: X3, lanes: 8, pcie_generation: 3, height: low, length_mm: 168, max_w: 25, riser: RISER-1 }
            needs:"""));
        add("extras.csv", "RISER-1,,\n");
        String enclosure = "shop/platforms/reed-sled.yaml:1: "
                + "no enclosure that takes REED-S has an offer together with one of its supplies, so it can only be sold to customers who have one.";
        assertThat(warnings("unsold-companion")).containsExactly(enclosure,
                "shop/platforms/wren-2.yaml:1: WREN-2 calls for FANS-2, which has no offer, so it cannot be sold with 2 processors or more.",
                "shop/platforms/wren-2.yaml:1: WREN-2 calls for BLANK, which has no offer, so it cannot be sold with a socket left empty.",
                "shop/platforms/wren-2.yaml:1: slots X2 and X3 of WREN-2 need the riser RISER-1, which has no offer, so they cannot be used.",
                "shop/platforms/wren-2.yaml:1: slot X1 of WREN-2 needs the riser RISER-2, which has no offer, so it cannot be used.");
        addOffers("FANS-2", "BLANK", "RISER-1", "RISER-2");
        assertThat(warnings("unsold-companion")).containsExactly(enclosure);
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
        addBays(BAYS);
        add("processors.csv", "X1-04,,XS9,Heath 1,4,4,2,2,65,2400,,1,\n");
        add("memory.csv", "M04,,DDR3,RDIMM,4,1,,8,1600,1.5,3\nM4E,,DDR4,UDIMM,4,1,,8,2400,1.2,3\n");
        add("offers.csv", "X1-04,B1,Marsh Trade,used,5,1,9,,\nX1-04,B1,Marsh Trade,used,4,5,9,,\nM04,B2,Marsh Trade,used,5,1,0,,\n");
        assertThat(warnings("no-platform")).containsExactly(
                "shop/memory.csv:5: no platform takes memory module M128: DDR4 3DS with 2 ranks.",
                "shop/memory.csv:6: no platform takes memory module M04: DDR3 RDIMM with 1 rank.",
                "shop/memory.csv:7: no platform takes memory module M4E: DDR4 UDIMM with 1 rank.",
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
    void aDriveFarFromItsLike() throws IOException {
        StringBuilder lots = new StringBuilder();
        for (int i = 0; i < 8; i++) {
            lots.append("HDD-4T,C%d,Marsh Trade,used,%d,1,9,,\n".formatted(i, 40 + i));
        }
        add("offers.csv", lots + "HDD-4T,C9,Marsh Trade,used,4.40,1,9,,\n");
        assertThat(warnings("price-off-trend")).containsExactly("shop/offers.csv:22: lot C9 sells HDD-4T at 0.001 EUR a GB; "
                + "the median of 9 like lots (drives, SAS hdd of 4000 GB, second-hand) is 0.011: is the price right?");
    }

    @Test
    void aMedianOfAnEvenNumberLiesBetweenTheMiddleOnes() {
        assertThat(PricesOffTrend.median(List.of(3.0, 1.0, 2.0))).isEqualTo(2);
        assertThat(PricesOffTrend.median(List.of(4.0, 1.0, 2.0, 3.0))).isEqualTo(2.5);
    }
}
