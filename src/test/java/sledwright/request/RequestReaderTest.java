package sledwright.request;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.catalog.CatalogReader;
import sledwright.catalog.CatalogSource;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Equipment;
import sledwright.domain.Goal;
import sledwright.domain.Licence;
import sledwright.domain.Limits;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemoryNeeds;
import sledwright.domain.Objective;
import sledwright.domain.PartChoice;
import sledwright.domain.Processor;
import sledwright.domain.ProcessorNeeds;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Shortlist;
import sledwright.domain.Slot;
import sledwright.domain.Supply;
import sledwright.domain.Worth;
import sledwright.domain.VolumeWish;
import sledwright.input.Faults;
import sledwright.input.FaultsException;
import sledwright.input.Source;
import sledwright.samples.RequestFiles;

class RequestReaderTest {

    private static final Path SHOP = Path.of("src/test/resources/shop").toAbsolutePath();
    private static final Catalog CATALOG = CatalogReader.read(SHOP);

    private static final String EVERYTHING = """
            kind: quote
            name: render node
            catalog: ../shop
            platforms: [WREN-2, REED-S]
            machines: 3
            require: { cores: 20, memory_gb: 192.5, bandwidth_gbs: 120, throughput: 300, base_ghz: 2.2, all_core_ghz: 2.6,
                       gb_per_core: 8, gbs_per_core: 4, spare_slots: 4, memory_mode: rank-sparing, processors: 2 }
            limit: { price: 2400.5, power_w: 420, lead_days: 3, inlet_c: -5, altitude_m: 1200, mains_v: 115, conditions: [new, used] }
            objective: best-value
            worth: { core: 12, gb: 0.955, gbs: 0, throughput: 0.2 }
            licence: { per_core: 640, per_processor: 0.5 }
            alternatives: 7
            step: 0.1
            forbid: [M64]
            use: [WREN-HS-2, M16]
            on_hand: { WREN-2: 1, M16: 8 }
            """;

    private static final String BUILD = """
            kind: build
            platform: WREN-2
            processor: H1-08
            processors: 2
            cooling: WREN-HS-1
            supply: RS-750
            supply_count: 2
            modules: { 2A1: M16, 1A1: M16 }
            """;

    @TempDir
    Path folder;

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("render-node.yaml"), text);
    }

    private Request request(String text, String... sets) throws IOException {
        return ((Job.Single) RequestFiles.job(file(text), CATALOG, sets)).request();
    }

    private Build build(String text, String... sets) throws IOException {
        return ((Job.Judge) RequestFiles.job(file(text), CATALOG, sets)).build();
    }

    @Test
    void quoteWithEveryKey() throws IOException {
        assertThat(request(EVERYTHING)).isEqualTo(new Request("render node", 3,
                new Requirements(new ProcessorNeeds(2, 20, 300, 2.2, 2.6), new MemoryNeeds(192.5, 120, 8, 4, 4, MemoryMode.RANK_SPARING)),
                new Limits(OptionalLong.of(240050), OptionalDouble.of(420), OptionalInt.of(3), OptionalDouble.of(-5), 1200, OptionalDouble.of(115), Set.of(Condition.NEW, Condition.USED)),
                new Goal(Objective.BEST_VALUE, new Worth(1200, 95.5, 0, 20), new Licence(64000, 50)), new Shortlist(7, 0.1),
                new PartChoice(Set.of("WREN-2", "REED-S"), Set.of("M64"), Set.of("WREN-HS-2", "M16"), Map.of("WREN-2", 1, "M16", 8), Equipment.NONE)));
    }

    @Test
    void quoteWithNothingButItsKind() throws IOException {
        assertThat(request("kind: quote\n")).isEqualTo(Request.named("render-node"));
    }

    @Test
    void aPriceOfZeroIsALimitAndAnAbsentOneIsNone() throws IOException {
        assertThat(request("kind: quote\nlimit: { price: 0 }\n").limit().price()).hasValue(0);
        assertThat(request("kind: quote\nlimit: { price: }\n").limit().price()).isEmpty();
        assertThat(request("kind: quote\nlimit:\n").limit()).isEqualTo(Limits.NONE);
    }

    @Test
    void anEmptyListOfPlatformsIsAll() throws IOException {
        assertThat(request("kind: quote\nplatforms: []\nlimit: { conditions: [] }\n")).isEqualTo(Request.named("render-node"));
    }

    @Test
    void overridesComeBeforeTheFile() throws IOException {
        Request request = request(EVERYTHING, "require.cores=24", "require.memory_gb=", "limit.conditions=[refurbished]", "platforms=[]",
                "on_hand.M16=4", "on_hand.RS-750=2", "name=other", "objective=cheapest");
        assertThat(request.require().cores()).isEqualTo(24);
        assertThat(request.require().memoryGb()).as("an empty value takes the key away").isZero();
        assertThat(request.require().bandwidthGbs()).isEqualTo(120);
        assertThat(request.limit().conditions()).containsExactly(Condition.REFURBISHED);
        assertThat(request.platforms()).isEmpty();
        assertThat(request.onHand()).isEqualTo(Map.of("WREN-2", 1, "M16", 4, "RS-750", 2));
        assertThat(request.name()).isEqualTo("other");
        assertThat(request.objective()).isEqualTo(Objective.CHEAPEST);
    }

    @Test
    void overridesMakeSectionsThatTheFileLacks() throws IOException {
        assertThat(request("kind: quote\n", "require.cores=24", "limit={price: 3}").require().cores()).isEqualTo(24);
        assertThat(request("kind: quote\n", "require.cores=24", "limit={price: 3}").limit().price()).hasValue(300);
    }

    /** Volumes by name or number, the rest by number; the number behind the last adds, nothing takes away. */
    @Test
    void overridesReachIntoLists() throws IOException {
        String two = "kind: quote\nrequire: { storage: [ { name: system, usable_gb: 200, level: 1 }, { name: data, usable_gb: 900, level: 5 } ] }\n";
        assertThat(request(two, "require.storage.data.usable_gb=800", "require.storage.0.level=0").equipment().volumes())
                .extracting(volume -> volume.name() + " " + volume.level().label() + " " + volume.usableGb()).containsExactly("system 0 200.0", "data 5 800.0");
        assertThat(request(two, "require.storage.system=").equipment().volumes()).extracting(VolumeWish::name).containsExactly("data");
        assertThat(request(two, "require.storage.2={ name: more, usable_gb: 1, level: 0 }", "require.storage.more.level=1").equipment().volumes())
                .extracting(volume -> volume.name() + volume.level().label()).containsExactly("system1", "data5", "more1");
        assertThat(request("kind: quote\nplatforms: [REED-S]\n", "platforms.0=WREN-2").platforms()).containsExactly("WREN-2");
        assertThat(request("kind: quote\n", "extras.RAILS=3").equipment().extras()).containsEntry("RAILS", 3);
        assertThat(request("kind: quote\n", "require.storage.0={ name: data, usable_gb: 800, level: 1 }", "require.storage.0.level=0").equipment().volumes())
                .extracting(volume -> volume.name() + volume.level().label()).containsExactly("data0");
    }

    @Test
    void theLastOfTwoOverridesHolds() throws IOException {
        assertThat(request("kind: quote\n", "machines=2", "machines=4").machines()).isEqualTo(4);
    }

    @Test
    void catalogueIsFoundFromTheFilesFolder() throws IOException {
        assertThat(RequestFiles.open(file(EVERYTHING)).catalog().orElseThrow().folder(new Faults())).contains(folder.resolveSibling("shop"));
        assertThat(RequestFiles.open(file(BUILD)).catalog()).isEmpty();
        Job job = RequestReader.read(Source.of(file("kind: quote\ncatalog: " + SHOP + "\n")), List.of(), Optional.empty(), List.of(Kind.QUOTE));
        assertThat(job.catalog().name()).isEqualTo("Reedmere Stores");
    }

    @Test
    void theCallersCatalogueComesBeforeTheFiles() throws IOException {
        Job job = RequestReader.read(Source.of(file("kind: quote\ncatalog: nowhere\n")), List.of(), Optional.of(CatalogSource.of(SHOP)), List.of(Kind.QUOTE));
        assertThat(job).isInstanceOf(Job.Quote.class);
        assertThat(job.catalog().name()).isEqualTo("Reedmere Stores");
    }

    @Test
    void noCatalogueAtAllIsAFault() throws IOException {
        Path file = file("kind: quote\n");
        assertThatThrownBy(() -> RequestReader.read(Source.of(file), List.of(), Optional.empty(), List.of(Kind.QUOTE)))
                .isInstanceOf(FaultsException.class).hasMessage(file + ": names no catalogue; add \"catalog: FOLDER\" or give --catalog FOLDER");
    }

    @Test
    void aKindThatTheCallerDoesNotTakeIsAFault() throws IOException {
        Path file = file("kind: quote\n");
        assertThatThrownBy(() -> RequestReader.read(Source.of(file), List.of(), Optional.of(CatalogSource.of(SHOP)), List.of(Kind.BUILD)))
                .isInstanceOf(FaultsException.class).hasMessage(file + ":1: kind \"quote\": must be build here");
    }

    @Test
    void build() throws IOException {
        Build build = build(BUILD);
        assertThat(build.platform().sku()).isEqualTo("WREN-2");
        assertThat(build.processors()).extracting(Processor::sku).containsExactly("H1-08", "H1-08");
        assertThat(build.cooling().sku()).isEqualTo("WREN-HS-1");
        assertThat(build.supply().map(Supply::redundant)).contains(1);
        assertThat(build.modules().keySet()).extracting(Slot::name).containsExactly("1A1", "2A1");
        assertThat(build.modules().values()).extracting(MemoryModule::sku).containsOnly("M16");
    }

    @Test
    void buildIsJudgedByTheTargetsOfItsFile() throws IOException {
        String text = BUILD + "require: { cores: 16 }\nlimit: { price: 900 }\nmachines: 2\non_hand: { M16: 2 }\nlicence: { per_core: 1 }\n";
        Request request = request(text);
        assertThat(request.require().cores()).isEqualTo(16);
        assertThat(request.limit().price()).hasValue(90000);
        assertThat(request.machines()).isEqualTo(2);
        assertThat(request.onHand()).isEqualTo(Map.of("M16", 2));
        assertThat(request.licence()).isEqualTo(new Licence(100, 0));
        assertThat(request(BUILD)).isEqualTo(Request.named("render-node").withEquipment(Equipment.NONE.withEnclosure(EnclosureFrom.OWN)));
    }

    @Test
    void buildsThatNoRuleAllowsCanStillBeWrittenDown() throws IOException {
        assertThat(build(BUILD, "processor=[H1-08, H2-16]").processors()).extracting(Processor::sku).containsExactly("H1-08", "H2-16");
        assertThat(build(BUILD, "processor=[H1-08, H2-16]", "processors=").processors()).hasSize(2);
        assertThat(build(BUILD, "processors=0").processors()).isEmpty();
        assertThat(build(BUILD, "processors=0", "processor=").processors()).isEmpty();
        assertThat(build(BUILD, "processors=5").processors()).hasSize(5);
        assertThat(build(BUILD, "supply=", "supply_count=").supply()).isEmpty();
        assertThat(build(BUILD, "supply=null").supply()).isEmpty();
        assertThat(build(BUILD, "modules=").modules()).isEmpty();
        assertThat(build(BUILD, "modules={}").modules()).isEmpty();
    }

    @Test
    void theNumberOfSuppliesChoosesTheOption() throws IOException {
        assertThat(build(BUILD, "supply_count=1").supply().map(Supply::redundant)).contains(0);
    }
}
