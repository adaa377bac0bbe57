package sledwright.catalog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.entry;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.domain.Availability;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.CoolingKit;
import sledwright.domain.Enclosure;
import sledwright.domain.Labour;
import sledwright.domain.Lot;
import sledwright.domain.Lot.PriceBreak;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.Part;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Slot;
import sledwright.domain.SpeedEntry;
import sledwright.domain.Stationery;
import sledwright.domain.Supply;
import sledwright.domain.Thermal.InletRow;
import sledwright.input.FaultsException;
import sledwright.samples.Folders;
import sledwright.samples.Variations;

class CatalogReaderTest {

    private static final Catalog SHOP = CatalogReader.read(Path.of("src/test/resources/shop"));

    @Test
    void shop() {
        assertThat(SHOP.name()).isEqualTo("Reedmere Stores");
        assertThat(SHOP.currency().getCurrencyCode()).isEqualTo("EUR");
        assertThat(SHOP.pricedOn()).isEqualTo(LocalDate.of(2025, 3, 31));
        assertThat(SHOP.labour()).isEqualTo(new Labour(4500, 150));
        assertThat(SHOP.throughputFactors()).containsOnly(entry("Heath 1", 7.5), entry("Heath 2", 8.25));
        assertThat(SHOP.amount(4500)).isEqualTo(new BigDecimal("45.00"));
    }

    @Test
    void everyPartIsThere() {
        assertThat(SHOP.parts()).extracting(Part::sku).containsExactlyInAnyOrder("WREN-2", "REED-S", "WREN-HS-1", "WREN-HS-2",
                "RS-750", "REED-F4", "RS-1200", "H1-08", "H1-10", "H2-16", "M08", "M16", "M64", "M128", "SSD-480", "HDD-4T", "NET-2X10", "CTL-8", "RAILS", "FANS-2");
    }

    @Test
    void enclosures() {
        Supply pair = SHOP.platform("WREN-2").orElseThrow().power().supplies().get(0);
        assertThat(SHOP.enclosures()).containsExactly(new Enclosure("REED-F4", "Reed frame for four sleds", Set.of("REED-S"), 4, 60.5, 900,
                List.of(new Supply("RS-750", "750 W supply", 2, 1, 750, 650, pair.efficiency()),
                        new Supply("RS-1200", "1200 W supply", 1, 0, 1200, 0, new TreeMap<>()))));
        assertThat(SHOP.enclosure("REED-F4")).contains(SHOP.enclosures().iterator().next());
        assertThat(SHOP.enclosure("REED-S")).isEmpty();
        assertThat(SHOP.platforms()).filteredOn(SHOP::isSled).extracting(Platform::sku).containsExactly("REED-S");
        assertThat(SHOP.parts()).filteredOn(part -> SHOP.isOfEnclosuresAlone(part.sku())).extracting(Part::sku)
                .containsExactlyInAnyOrder("REED-F4", "RS-1200");
        assertThat(SHOP.withLots(Map.of()).enclosures()).containsExactlyElementsOf(SHOP.enclosures());
    }

    @Test
    void aFileWhereTheEnclosuresShouldBeIsAFault(@TempDir Path folder) throws IOException {
        Path file = Files.createFile(folder.resolve("enclosures"));
        assertThatThrownBy(() -> CatalogReader.read(folder)).isInstanceOf(FaultsException.class)
                .hasMessageContaining(file + ": is a file; it must be a folder with a YAML file for each enclosure");
    }

    @Test
    void processors() {
        assertThat(SHOP.processors()).containsExactly(
                new Processor("H1-08", "Heath 1 with 8 cores", new Processor.Fit("HS1", "Heath 1"),
                        new Processor.CoreFigures(8, 16, 2.4, 2.9, 85), new Processor.MemoryReach(2400, OptionalInt.of(768)), 2,
                        OptionalDouble.of(190.5)),
                new Processor("H1-10", "H1-10", new Processor.Fit("HS1", "Heath 1"), new Processor.CoreFigures(10, 20, 2.2, 2.6, 105),
                        new Processor.MemoryReach(2400, OptionalInt.empty()), 2, OptionalDouble.empty()),
                new Processor("H2-16", "Heath 2, 16 cores", new Processor.Fit("HS1", "Heath 2"),
                        new Processor.CoreFigures(16, 32, 2.1, 2.8, 150), new Processor.MemoryReach(2666, OptionalInt.of(1024)), 2,
                        OptionalDouble.of(410)));
    }

    @Test
    void modules() {
        assertThat(SHOP.modules()).containsExactly(
                new MemoryModule("M08", "8 GB 1Rx8", "DDR4", new MemoryModule.Kind(ModuleType.RDIMM, 8, 1, 8), 1,
                        new MemoryModule.Rating(2400, 1.2, 3)),
                new MemoryModule("M16", "16 GB 2Rx4", "DDR4", new MemoryModule.Kind(ModuleType.RDIMM, 16, 2, 4), 2,
                        new MemoryModule.Rating(2666, 1.2, 4.5)),
                new MemoryModule("M64", "64 GB 4Rx4", "DDR4", new MemoryModule.Kind(ModuleType.LRDIMM, 64, 4, 4), 2,
                        new MemoryModule.Rating(2666, 1.2, 7)),
                new MemoryModule("M128", "128 GB stacked", "DDR4", new MemoryModule.Kind(ModuleType.THREE_DS, 128, 2, 4), 4,
                        new MemoryModule.Rating(2666, 1.2, 9)));
    }

    @Test
    void lotsWithTheirPriceBreaks() {
        assertThat(SHOP.lots("M16")).containsExactly(
                new Lot("M16", "A6", "Fen Surplus", Condition.USED, new Availability(60, 2),
                        List.of(new PriceBreak(1, 2150, OptionalLong.of(1225)), new PriceBreak(16, 1900, OptionalLong.of(1225))), false),
                new Lot("M16", "A7", "Marsh Trade", Condition.NEW, new Availability(100, 7),
                        List.of(new PriceBreak(1, 4400, OptionalLong.empty())), false));
        assertThat(SHOP.lots("H1-10")).containsExactly(new Lot("H1-10", "A4", "Marsh Trade", Condition.REFURBISHED, new Availability(6, 0),
                List.of(new PriceBreak(1, 3900, OptionalLong.of(2000))), false));
        assertThat(SHOP.lots("M08")).as("a part without an offer").isEmpty();
    }

    /** Spellings and aliases are resolved before rows of a lot are held against each other, and whose shelf is the shop's own after that. */
    @Test
    void suppliersAreOneByWhateverName(@TempDir Path folder) throws IOException {
        Folders.copy(Folders.SHOP, folder);
        Files.writeString(folder.resolve("catalog.yaml"), """

                own_suppliers: [marsh trade returns, Reedmere stock]
                supplier_aliases: { FEN SURPLUS: Fen & Sons, Marsh Trade Returns: Marsh Trade, 'marsh trade ': Marsh Trade }
                """, StandardOpenOption.APPEND);
        Path offers = folder.resolve("offers.csv");
        Files.writeString(offers, Files.readString(offers).replace("M16,A6,Fen Surplus,used,19.00", "M16,A6, fen surplus ,used,19.00")
                .replace("M64,A8,Marsh Trade", "M64,A8,marsh trade returns"));
        Catalog shop = CatalogReader.read(folder);
        assertThat(shop.lots("M16")).extracting(Lot::supplier).containsExactly("Fen & Sons", "Marsh Trade");
        assertThat(shop.lots("M64")).extracting(Lot::supplier).containsExactly("Marsh Trade");
        assertThat(shop.suppliers().isOwn("Marsh Trade")).isTrue();
        assertThat(shop.suppliers().isOwn("reedmere Stock")).isTrue();
        assertThat(shop.suppliers().isOwn("Fen & Sons")).isFalse();
        assertThat(Variations.of(shop.withLots(Map.of()), Stationery.PLAIN).suppliers()).isEqualTo(shop.suppliers());
        assertThat(CatalogReader.readPlaced(folder).offers()).extracting(row -> row.value().supplier()).doesNotContain("Fen Surplus", " fen surplus ");
    }

    @Test
    void platformWithEveryKey() {
        Platform wren = SHOP.platform("WREN-2").orElseThrow();
        assertThat(wren.name()).isEqualTo("Wren two-socket machine");
        assertThat(wren.processors().socket()).isEqualTo("HS1");
        assertThat(wren.processors().generations()).containsExactlyInAnyOrder("Heath 1", "Heath 2");
        assertThat(wren.processors().counts()).containsExactly(1, 2);
        assertThat(wren.processors().maxTdpW()).isEqualTo(150);
        assertThat(wren.memory().generation()).isEqualTo("DDR4");
        assertThat(wren.memory().channels()).isEqualTo(4);
        assertThat(wren.memory().slotsPerChannel()).isEqualTo(2);
        assertThat(wren.memory().maxLogicalRanks()).isEqualTo(Map.of(ModuleType.RDIMM, 8, ModuleType.LRDIMM, 8));
        assertThat(wren.memory().speeds()).containsExactly(
                new SpeedEntry(ModuleType.RDIMM, Set.of(1, 2), List.of(2666, 2400)),
                new SpeedEntry(ModuleType.RDIMM, Set.of(4), List.of(2400)),
                new SpeedEntry(ModuleType.LRDIMM, Set.of(), List.of(2666, 2666)));
        assertThat(wren.memory().mix().maxDistinctCapacities()).isEqualTo(1);
        assertThat(wren.memory().mix().widths()).isFalse();
        assertThat(wren.memory().mix().countsPerSocket()).containsExactlyInAnyOrder(1, 2, 4, 8);
        assertThat(wren.memory().modes().mirroredFraction()).hasValue(0.45);
        assertThat(wren.memory().modes().rankSparing()).isTrue();
        assertThat(wren.board().fillSide()).isEqualTo("outermost");
        assertThat(wren.board().slots()).hasSize(16).first().isEqualTo(new Slot("1A1", 0, 0, 0));
        assertThat(wren.cooling()).containsExactly(new CoolingKit("WREN-HS-1", "low heat sink", 105, List.of()),
                new CoolingKit("WREN-HS-2", "deep heat sink", 150, List.of("1D2", "2D2")));
        assertThat(wren.thermal().altitudeFromM()).isEqualTo(950);
        assertThat(wren.thermal().metresPerKelvin()).isEqualTo(300);
        assertThat(wren.thermal().inlet()).as("of one TDP a type's own row speaks before the one for all").containsExactly(
                new InletRow(105, 35, Set.of()),
                new InletRow(150, 27.5, Set.of(ModuleType.LRDIMM, ModuleType.THREE_DS)),
                new InletRow(150, 30, Set.of()));
        assertThat(wren.power().baseW()).isEqualTo(85);
        assertThat(wren.power().budgetW()).as("a budget of 0 is none").isEmpty();
        assertThat(wren.power().supplies()).extracting(Supply::name).as("named once, it is named everywhere").containsOnly("750 W supply");
        assertThat(wren.power().supplies()).extracting(Supply::count).containsExactly(2, 1);
        assertThat(wren.power().supplies()).extracting(Supply::redundant).containsExactly(1, 0);
        assertThat(wren.power().supplies().get(0).watts()).isEqualTo(750);
        assertThat(wren.power().supplies().get(0).lowLineWatts()).isEqualTo(650);
        assertThat(wren.power().supplies().get(0).efficiency()).containsExactly(entry(10, 82.0), entry(20, 88.0), entry(50, 92.5), entry(100, 88.0));
    }

    @Test
    void platformWithTheNeededKeysAlone() {
        Platform reed = SHOP.platform("REED-S").orElseThrow();
        assertThat(reed.name()).isEqualTo("REED-S");
        assertThat(reed.memory().maxLogicalRanks()).isEmpty();
        assertThat(reed.memory().mix().maxDistinctCapacities()).isEqualTo(2);
        assertThat(reed.memory().mix().widths()).isTrue();
        assertThat(reed.memory().mix().countsPerSocket()).isEmpty();
        assertThat(reed.memory().modes().mirroredFraction()).hasValue(0.5);
        assertThat(reed.memory().modes().rankSparing()).isFalse();
        assertThat(reed.board().slots()).extracting(Slot::name).containsExactly("DIMM 1", "DIMM 2");
        assertThat(reed.board().fillSide()).isEmpty();
        assertThat(reed.cooling()).containsExactly(new CoolingKit("WREN-HS-1", "low heat sink", 105, List.of()));
        assertThat(reed.thermal().inlet()).isEmpty();
        assertThat(reed.thermal().correctedInletC(25, 3000)).isEqualTo(25);
        assertThat(reed.power().budgetW()).hasValue(180.5);
        assertThat(reed.power().supplies()).isEmpty();
    }
}
