package sledwright.request;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Collections;
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
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.DeliverBy;
import sledwright.domain.Equipment;
import sledwright.domain.Goal;
import sledwright.domain.Licence;
import sledwright.domain.Limits;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryNeeds;
import sledwright.domain.Objective;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.PartChoice;
import sledwright.domain.ProcessorNeeds;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Shortlist;
import sledwright.domain.Worth;
import sledwright.input.Faults;
import sledwright.input.FaultsException;
import sledwright.samples.RequestFiles;

/** The shop's prices are of 2025-03-31. */
class OrderFileTest {

    private static final Catalog CATALOG = CatalogReader.read(Path.of("src/test/resources/shop"));

    private static final String EVERYTHING = """
            kind: order
            name: spring order
            catalog: ../shop
            suppliers_max: 3
            delivery_charge: 12.50
            module_part_charge: 0.75
            ship_by: 2025-04-07
            on_hand: { REED-F4: 1, M16: 8 }
            lines:
              - name: web
                machines: 6
                platforms: [REED-S]
                require: { cores: 8, memory_gb: 32 }
                limit: { lead_days: 14, mains_v: 230 }
                priority: 5
                uniform: true
              - name: data
                machines: 2
                require: { cores: 20, memory_gb: 192.5, bandwidth_gbs: 120, throughput: 300, base_ghz: 2.2, all_core_ghz: 2.6,
                           gb_per_core: 8, gbs_per_core: 4, spare_slots: 4, memory_mode: rank-sparing, processors: 2 }
                limit: { power_w: 420, lead_days: 3, inlet_c: -5, altitude_m: 1200, mains_v: 115, conditions: [new, used] }
                objective: best-value
                worth: { core: 12, gb: 0.955, gbs: 0, throughput: 0.2 }
                licence: { per_core: 640, per_processor: 0.5 }
                forbid: [M64]
                use: [WREN-HS-2, M16]
              - machines: 1
            """;

    private static final String BY_NAME = """
            kind: order
            lines:
              web: { machines: 6, require: { cores: 8 } }
              data.eu: { machines: 2, name: data }
            """;

    @TempDir
    Path folder;

    private Job.Order job(String text, String... sets) throws IOException {
        Path file = Files.writeString(folder.resolve("spring.yaml"), text);
        return (Job.Order) RequestFiles.job(file, CATALOG, sets);
    }

    private OrderRequest order(String text, String... sets) throws IOException {
        return job(text, sets).order();
    }

    /** By a day, where the answer is of the day of the prices. */
    private static Limits by(String day, int days) {
        return by(Limits.NONE, day, days);
    }

    private static Limits by(Limits other, String day, int days) {
        return other.withBy(Optional.of(new DeliverBy(LocalDate.parse(day), days)));
    }

    @Test
    void everyKey() throws IOException {
        Request web = new Request("web", 6, new Requirements(new ProcessorNeeds(0, 8, 0, 0, 0), new MemoryNeeds(32, 0, 0, 0, 0, MemoryMode.INDEPENDENT)),
                by(new Limits(OptionalLong.empty(), OptionalDouble.empty(), OptionalInt.of(14), OptionalDouble.empty(), 0, OptionalDouble.of(230), Set.of()), "2025-04-07", 7),
                Goal.CHEAPEST, Shortlist.PLAIN, PartChoice.of(Set.of("REED-S")));
        Request data = new Request("data", 2, new Requirements(new ProcessorNeeds(2, 20, 300, 2.2, 2.6),
                new MemoryNeeds(192.5, 120, 8, 4, 4, MemoryMode.RANK_SPARING)),
                by(new Limits(OptionalLong.empty(), OptionalDouble.of(420), OptionalInt.of(3), OptionalDouble.of(-5), 1200, OptionalDouble.of(115), Set.of(Condition.NEW, Condition.USED)), "2025-04-07", 7),
                new Goal(Objective.BEST_VALUE, new Worth(1200, 95.5, 0, 20), new Licence(64000, 50)), Shortlist.PLAIN,
                new PartChoice(Set.of(), Set.of("M64"), Set.of("WREN-HS-2", "M16"), Map.of(), Equipment.NONE));
        assertThat(order(EVERYTHING)).isEqualTo(new OrderRequest("spring order",
                List.of(new OrderLine("web", web, 5, true), new OrderLine("data", data, 1, false),
                        new OrderLine("line 3", Request.named("line 3").withLimit(by("2025-04-07", 7)), 1, false)),
                OptionalInt.of(3), 1250, 75, Map.of("REED-F4", 1, "M16", 8)));
        assertThat(order(EVERYTHING).machines()).isEqualTo(9);
        assertThat(job(EVERYTHING).name()).isEqualTo("spring order");
        assertThat(RequestFiles.open(folder.resolve("spring.yaml")).catalog().orElseThrow().folder(new Faults())).contains(folder.resolveSibling("shop"));
    }

    @Test
    void nothingButALine() throws IOException {
        assertThat(order("kind: order\nlines: [ {} ]\n")).isEqualTo(new OrderRequest("spring",
                List.of(new OrderLine("line 1", Request.named("line 1"), 1, false)), OptionalInt.empty(), 0, 0, Map.of()));
    }

    @Test
    void linesByName() throws IOException {
        OrderRequest order = order(BY_NAME);
        assertThat(order.lines()).extracting(OrderLine::name).containsExactly("web", "data");
        assertThat(order.lines()).extracting(OrderLine::machines).containsExactly(6, 2);
        assertThat(order.lines().get(1).request().name()).isEqualTo("data");
    }

    @Test
    void daysToShipByCountFromTheDayOfTheAnswer() throws IOException {
        assertThat(order("kind: order\nship_by: 2025-03-31\nlines: [ {} ]\n").lines().get(0).request().limit()).isEqualTo(by("2025-03-31", 0));
        assertThat(order("kind: order\nship_by: 2199-12-31\nlines: [ {} ]\n").lines().get(0).request().limit())
                .isEqualTo(by("2199-12-31", 63_827));
        assertThat(order("kind: order\nship_by: 2025-03-30\nlines: [ {} ]\n").lines().get(0).request().limit()).isEqualTo(by("2025-03-30", -1));
        assertThat(order("kind: order\nlines: [ {} ]\n").lines().get(0).request().limit()).isEqualTo(Limits.NONE);
    }

    @Test
    void overridesReachIntoAListByNameAndByNumber() throws IOException {
        OrderRequest order = order(EVERYTHING, "lines.web.machines=5", "lines.1.machines=4", "lines.2.require.cores=4", "lines.web.limit.lead_days=2",
                "lines.data.limit.inlet_c=", "on_hand.M16=", "ship_by=");
        assertThat(order.lines()).extracting(OrderLine::machines).containsExactly(5, 4, 1);
        assertThat(order.lines().get(0).request().limit().leadDays()).hasValue(2);
        assertThat(order.lines().get(1).request().limit().inletC()).isEmpty();
        assertThat(order.lines().get(1).request().limit().powerW()).hasValue(420);
        assertThat(order.lines().get(2).request().require().cores()).isEqualTo(4);
        assertThat(order.onHand()).isEqualTo(Map.of("REED-F4", 1));
    }

    @Test
    void overridesReachIntoLinesByName() throws IOException {
        OrderRequest order = order(BY_NAME, "lines.web.require.cores=10", "lines.data.eu.machines=3", "lines.data.eu.require.memory_gb=64",
                "lines.edge={machines: 7}");
        assertThat(order.lines()).extracting(OrderLine::name).containsExactly("web", "data", "edge");
        assertThat(order.lines()).extracting(OrderLine::machines).containsExactly(6, 3, 7);
        assertThat(order.lines().get(0).request().require().cores()).isEqualTo(10);
        assertThat(order.lines().get(1).request().require().memoryGb()).isEqualTo(64);
    }

    @Test
    void aMistypedNameMakesNoNewLine() {
        assertThatThrownBy(() -> order(BY_NAME, "lines.wbe.machines=5", "lines.date.eu=")).isInstanceOf(FaultsException.class)
                .hasMessage("--set lines.wbe.machines=5: there is no such line; give its name, did you mean web?" + System.lineSeparator()
                        + "--set lines.date.eu=: there is no such line; give its name; known are web, data.eu");
    }

    @Test
    void anEmptyOverrideTakesALineAway() throws IOException {
        assertThat(order(BY_NAME, "lines.web=").lines()).extracting(OrderLine::name).containsExactly("data");
        assertThat(order(EVERYTHING, "lines.0=", "lines.data=").lines()).extracting(OrderLine::name).containsExactly("line 1");
        assertThat(order(EVERYTHING, "lines.0={name: other}").lines()).extracting(OrderLine::name).containsExactly("other", "data", "line 3");
    }

    @Test
    void aHundredThousandMachinesInALine() throws IOException {
        assertThat(order("kind: order\nlines: [ { machines: 100000 }, { machines: 100000 } ]\n").machines()).isEqualTo(200_000);
    }

    @Test
    void moreLinesThanAnyOrderHasIsAFault() throws IOException {
        String most = "kind: order\nlines: [" + String.join(", ", Collections.nCopies(10_000, "{}")) + "]\n";
        assertThat(order(most).lines()).hasSize(10_000);
        String tooMany = most.replace("]", ", {}]");
        assertThatThrownBy(() -> order(tooMany)).isInstanceOf(FaultsException.class)
                .hasMessage(folder.resolve("spring.yaml") + ":2: there are 10001 lines; their number must be from 1 to 10000 lines");
    }

    @Test
    void aNameThatTwoLinesShareIsAFaultHoweverTheyCameByIt() throws IOException {
        assertThatThrownBy(() -> order(BY_NAME, "lines.data.eu.name=web")).isInstanceOf(FaultsException.class)
                .hasMessage("--set lines.data.eu.name=web: line \"web\" stands twice, first at line 3");
    }
}
