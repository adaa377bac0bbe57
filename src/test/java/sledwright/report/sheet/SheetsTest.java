package sledwright.report.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.domain.MemoryMode;
import sledwright.domain.Pick;
import sledwright.report.build.Precautions;
import sledwright.samples.Equipped;
import sledwright.domain.RaidLevel;
import sledwright.domain.Request;
import sledwright.generator.Doubts;
import sledwright.generator.time.Deadline;
import sledwright.planner.upgrade.Installed;
import sledwright.planner.upgrade.Upgrade;
import sledwright.planner.upgrade.Upgrader;
import sledwright.planner.upgrade.Whole;
import sledwright.report.Schemas;
import sledwright.report.sheet.BoardView.Place;
import sledwright.report.sheet.SheetView.Expected;
import sledwright.report.sheet.SheetView.Sheet;
import sledwright.report.sheet.SheetView.Stage;
import sledwright.report.text.Screen;
import sledwright.rules.Order;
import sledwright.samples.Answers;
import sledwright.samples.Samples;

class SheetsTest {

    private static Order order(Build... machines) {
        return Answers.order(Answers.ASKED.withMachines(machines.length), machines);
    }

    /** One processor with four modules of 16 GB, which shall have two with sixteen. */
    private static Upgrade upgrade(int machines) {
        Build before = Samples.machine(Answers.BOX).processors(1, Answers.COOL).cooling(Samples.LOW).channels(4, Answers.R16).build();
        Request request = Answers.ASKED.withMachines(machines).withRequire(Samples.require().cores(20).memoryGb(192).make()).withLimit(Samples.limit().make());
        Installed installed = Installed.of(before, machines, 0.5, request.limit(), Answers.SHOP);
        Upgrader upgrader = new Upgrader(Answers.SHOP, request, installed);
        return upgrader.answer(upgrader.findings(Deadline.never()), Deadline.never());
    }

    private static SheetView upgraded(int machines) {
        Upgrade upgrade = upgrade(machines);
        return Sheets.ofUpgrade(upgrade.plan().orElseThrow(), upgrade);
    }

    private static Map<String, Integer> byLot(List<SheetView.Pick> picks) {
        return picks.stream().collect(Collectors.toMap(pick -> pick.sku() + " " + pick.lot(), SheetView.Pick::units, Integer::sum, TreeMap::new));
    }

    @Test
    void eachKindOfMachineHasASheetAndItsShareOfTheLots() {
        Order order = order(Answers.cool(), Answers.coolHeavier(), Answers.coolHeavier());
        SheetView view = Sheets.ofAlternative(order, 2);
        assertThat(view.machines()).isEqualTo(3);
        assertThat(view.rank()).hasValue(2);
        assertThat(view.sheets()).extracting(Sheet::machines).containsExactly(2, 1);
        assertThat(byLot(view.sheets().get(0).moved().picks())).containsEntry("R16B M2", 16).containsEntry("BOX B1", 2).doesNotContainKey("R16 M1");
        assertThat(byLot(view.sheets().get(1).moved().picks())).containsEntry("R16 M1", 8).containsEntry("BOX B1", 1);
        Map<String, Integer> drawn = order.picks().stream()
                .collect(Collectors.toMap(pick -> pick.sku() + " " + pick.lot().lot(), Pick::quantity, Integer::sum, TreeMap::new));
        assertThat(byLot(view.sheets().stream().flatMap(sheet -> sheet.moved().picks().stream()).toList())).isEqualTo(drawn);
    }

    @Test
    void whatIsPickedIsWhatTheMachineTakes() {
        Sheet sheet = Sheets.ofBuild(order(Answers.hot())).sheets().get(0);
        Map<String, Integer> units = sheet.moved().picks().stream().collect(Collectors.toMap(SheetView.Pick::sku, SheetView.Pick::units, Integer::sum, TreeMap::new));
        assertThat(units).isEqualTo(Answers.hot().partCounts());
        assertThat(sheet.moved().pulled()).isEmpty();
        assertThat(sheet.boards().before()).isEmpty();
    }

    @Test
    void stagesComeInTheOrderInWhichHandsWork() {
        // Nobody wears a strap at a machine that may be under power.
        assertThat(Sheets.ofBuild(order(Answers.cool())).sheets().get(0).work().stages()).extracting(Stage::title).containsExactly("Power off",
                "Static", "Open", "Processors", "Heat sinks", "Modules into socket 1", "Modules into socket 2", "Power supplies", "Close", "First start");
    }

    @Test
    void aSocketWithoutProcessorIsNamed() {
        assertThat(Sheets.ofBuild(order(Answers.sled())).sheets().get(0).work().stages().get(3).steps()).endsWith("Put processor P10 into socket 1.",
                "Socket 2 stays empty: leave its cap on and its slots free.");
        assertThat(SheetText.of(Sheets.ofBuild(order(Answers.cool())), Screen.PLAIN)).doesNotContain("stays empty");
    }

    @Test
    void stepsNameTheStandardsFigures() {
        List<Stage> stages = Sheets.ofBuild(order(Answers.cool())).sheets().get(0).work().stages();
        assertThat(stages.get(0).steps()).satisfiesExactly(off -> assertThat(off).contains("switch it off", "unplug every cord"),
                cool -> assertThat(cool).contains("Let them cool"));
        List<String> steps = stages.get(1).steps();
        // ANSI/ESD S20.20 and IEC 61340-5-1.
        assertThat(steps.get(0)).contains("wrist-strap system must be below 3.5 x 10^7 ohm", "work surface below 1 x 10^9 ohm", "ANSI/ESD S20.20", "IEC 61340-5-1");
    }

    @Test
    void modulesGoInTheFirstSlotsOfAllChannelsFirst() {
        Sheet sheet = Sheets.ofBuild(order(Answers.hot())).sheets().get(0);
        assertThat(sheet.work().stages().get(5).steps()).contains("Put 3 x R16 into slots 1A1, 1B1, 1C1.", "Put R16B into slot 1D1.",
                "Put 3 x R16 into slots 1A2, 1B2, 1C2.", "Put R16B into slot 1D2.", "Socket 1: 8 modules, every latch closed, all at one height.");
        assertThat(sheet.boards().after().places()).filteredOn(place -> place.name().startsWith("2") && place.order().isPresent())
                .extracting(place -> place.name() + " " + place.order().getAsInt())
                .containsExactly("2A1 1", "2A2 5", "2B1 2", "2B2 6", "2C1 3", "2C2 7", "2D1 4", "2D2 8");
        assertThat(sheet.work().stages().get(4).steps()).contains("The heat sinks cover 1D3, 2D3: nothing goes in there.");
    }

    @Test
    void theFirstStartIsTheMachinesOwnFigures() {
        Request mirrored = Answers.ASKED.withRequire(Samples.require().mode(MemoryMode.MIRRORED).make());
        Sheet sheet = Sheets.ofBuild(Answers.order(mirrored, Answers.cool())).sheets().get(0);
        Expected expected = sheet.checked().expected();
        assertThat(expected.memory().capacityGb()).isEqualTo(128);
        assertThat(expected.memory().usableGb()).isEqualTo(64);
        assertThat(expected.memory().mode()).isEqualTo("mirrored");
        assertThat(expected.memory().mts()).isEqualTo(2400);
        assertThat(expected.cores()).isEqualTo(20);
        assertThat(expected.loadW()).isEqualTo(Answers.order(mirrored, Answers.cool()).figures().loadW());
        assertThat(expected.memory().channels()).hasSize(8).allMatch(channel -> channel.modules() == 1 && channel.capacityGb() == 16);
        assertThat(sheet.work().stages().get(9).steps().get(0)).startsWith("Set the memory mode to mirrored in the firmware.");
        assertThat(SheetWords.expected(expected)).contains(new SheetWords.Row("channels 1A to 1D, 2A to 2D", "1 module, 16 GB each"),
                new SheetWords.Row("usable memory (mirrored)", "64 GB"), new SheetWords.Row("memory speed", "2400 MT/s"));
    }

    @Test
    void anUpgradeShowsWhatComesOutMovesAndGoesIn() {
        SheetView view = upgraded(1);
        Sheet sheet = view.sheets().get(0);
        BoardView before = sheet.boards().before().orElseThrow();
        assertThat(before.places()).filteredOn(place -> place.module().isPresent()).extracting(Place::name).containsExactly("1A1", "1B1", "1C1", "1D1");
        Map<String, Integer> in = sheet.moved().picks().stream().collect(Collectors.toMap(SheetView.Pick::sku, SheetView.Pick::units, Integer::sum, TreeMap::new));
        assertThat(in).containsEntry("P10", 1).containsEntry("LOW", 1).doesNotContainKey("BOX").doesNotContainKey("PAIR");
        int modulesIn = in.entrySet().stream().filter(part -> part.getKey().startsWith("R")).mapToInt(Map.Entry::getValue).sum();
        assertThat(sheet.boards().after().places()).filteredOn(place -> place.mark().equals("IN")).hasSize(modulesIn).allMatch(place -> place.order().isPresent());
        assertThat(sheet.boards().after().places()).filteredOn(place -> place.mark().isEmpty()).allMatch(place -> place.order().isEmpty());
        assertThat(sheet.boards().after().sockets().get(1).processor().orElseThrow()).isEqualTo(new BoardView.Fitted("P10", "IN"));
        assertThat(sheet.checked().expected().memory().capacityGb()).isGreaterThanOrEqualTo(192);
    }

    @Test
    void everyUpgradedMachineGetsItsShare() {
        SheetView one = upgraded(1);
        SheetView two = upgraded(2);
        assertThat(two.sheets().stream().mapToInt(Sheet::machines).sum()).isEqualTo(2);
        assertThat(units(two)).isEqualTo(2 * units(one));
    }

    private static int units(SheetView view) {
        return view.sheets().stream().flatMap(sheet -> sheet.moved().picks().stream()).mapToInt(SheetView.Pick::units).sum();
    }

    @Test
    void aMachineThatStaysAsItIsHasNoSteps() {
        Build stays = Answers.cool();
        Request request = Answers.ASKED.withRequire(Samples.require().cores(20).make()).withLimit(Samples.limit().make());
        Installed installed = Installed.of(stays, 1, 0, request.limit(), Answers.SHOP);
        Upgrader upgrader = new Upgrader(Answers.SHOP, request, installed);
        Upgrade upgrade = upgrader.answer(upgrader.findings(Deadline.never()), Deadline.never());
        SheetView view = Sheets.ofUpgrade(upgrade.plan().orElseThrow(), upgrade);
        assertThat(view.sheets().get(0).work().stages()).isEmpty();
        assertThat(view.sheets().get(0).moved().picks()).isEmpty();
        assertThat(SheetText.of(view, Screen.PLAIN)).contains("Nothing is to be done: the machine stays as it is.");
    }

    @Test
    void buyingWholeComesFirstWhereItCostsLess() {
        assertThat(upgraded(1).notice()).isEmpty();
        Upgrade upgrade = upgrade(1);
        Upgrade cheaper = new Upgrade(upgrade.request(), upgrade.installed(), upgrade.breaches(), upgrade.misses(),
                new Upgrade.Proof(upgrade.proof().status(), upgrade.proof().bound(), Doubts.NONE, Doubts.NONE),
                upgrade.plan(), Optional.of(new Whole(upgrade.whole().orElseThrow().order(), Long.MAX_VALUE / 2)));
        SheetView told = Sheets.ofUpgrade(cheaper.plan().orElseThrow(), cheaper);
        assertThat(told.notice()).hasValueSatisfying(words -> assertThat(words).startsWith("Buying whole costs less than this upgrade."));
        assertThat(SheetText.of(told, Screen.PLAIN)).startsWith("Bench sheet: render node\nBuying whole costs less than this upgrade.");
    }

    @Test
    void whatIsWrittenDownHasItsFields() {
        List<SheetView.Fields> records = Sheets.ofBuild(order(Answers.cool())).sheets().get(0).checked().records();
        assertThat(records).extracting(SheetView.Fields::title).containsExactly("Machine", "Serial numbers of processors", "Serial numbers of modules",
                "Firmware", "Memory test");
        assertThat(records.get(1).labels()).containsExactly("socket 1", "socket 2");
        assertThat(records.get(2).labels()).containsExactlyInAnyOrder("1A1", "1B1", "1C1", "1D1", "2A1", "2B1", "2C1", "2D1");
        assertThat(SheetText.of(Sheets.ofBuild(order(Answers.cool())), Screen.PLAIN).replaceAll("\\s+", " ")).contains(" To fill in ", "Serial number ____", "Built by, date ____",
                "socket 2 ____", "2D1 ____", "Firmware: ", "Memory test: ");
        // Of an upgrade what goes in.
        assertThat(upgraded(1).sheets().get(0).checked().records().get(1).labels()).containsExactly("socket 2");
    }

    private static SheetView equipped() {
        return Sheets.ofBuild(Order.of(List.of(Equipped.machine().with(fitout -> fitout.volume("system", RaidLevel.LEVEL_1, "front", 2, Equipped.SSD, 1)
                .driver("X1").card("X1", Equipped.CONTROLLER).card("X2", Equipped.NET).extra(Equipped.RISER, 1)).build()), List.of(), Request.named("store"), Answers.SHOP));
    }

    /** What goes where, in the order of the work: what cards stand on before them, drives before their cables. */
    @Test
    void drivesAndCardsHaveTheirStepsFieldsAndFigures() {
        SheetView.Sheet sheet = equipped().sheets().get(0);
        assertThat(sheet.work().stages()).extracting(SheetView.Stage::title).containsSubsequence("Modules into socket 2", "Extras", "Cards", "Drives", "Cables of drives",
                "Power supplies", "Close", "First start");
        assertThat(sheet.work().stages().stream().flatMap(stage -> stage.steps().stream())).contains("Add RISER-2.", "Put card CTL-8 into slot X1.", "Put card NET-2X10 into slot X2.",
                "Put 3 x SSD-480 into bays front 1, front 2, front 3.", "Connect 3 x SSD-480 to the controller in slot X1.",
                "Volume system: level 1 on front 1 and front 2 with front 3 as hot spare, 480 GB usable. Set it up.");
        assertThat(sheet.work().handling()).contains(Procedure.DRIVE, Procedure.CARD, Procedure.EXTRA).doesNotContainAnyElementsOf(Precautions.DRIVES);
        assertThat(sheet.checked().records()).contains(new SheetView.Fields("Serial numbers of drives", List.of("front 1", "front 2", "front 3")),
                new SheetView.Fields("Serial numbers of cards", List.of("X1", "X2")));
        assertThat(SheetWords.expected(sheet.checked().expected())).contains(new SheetWords.Row("volume system, level 1", "2 drives of 480 GB, 1 hot spare, 480 GB usable"),
                new SheetWords.Row("card in slot X2", "NET-2X10"));
        assertThat(SheetText.of(equipped(), Screen.PLAIN).replaceAll(" +", " ")).contains("Bays", "front 3 SSD-480 480 system, spare", "front 4 to 8 empty", "fast 1 to 2 2 empty",
                "Slots for cards", "X2 8 2 RISER-2 NET-2X10");
    }

    @Test
    void jsonKeepsItsSchemaAndEveryKeyIsDescribed() throws IOException {
        String described = Files.readString(Path.of("docs/json.md"));
        Set<String> keys = new TreeSet<>();
        for (SheetView view : List.of(Sheets.ofBuild(order(Answers.hot())), Sheets.ofAlternative(order(Answers.sled()), 3), upgraded(1), equipped())) {
            String json = SheetJson.of(view);
            assertThat(Schemas.faults("sheet-result", json)).as(json).isEmpty();
            collect(new ObjectMapper().readTree(json), keys);
        }
        assertThat(keys).hasSizeGreaterThan(35).allSatisfy(key -> assertThat(described).contains("`" + key + "`"));
        String json = SheetJson.of(Sheets.ofBuild(order(Answers.hot())));
        assertThat(Schemas.faults("sheet-result", json.replace("\"covered\"", "\"hidden\""))).isNotEmpty();
        assertThat(Schemas.faults("sheet-result", json.replaceFirst("\"units\": 1", "\"units\": \"1\""))).isNotEmpty();
    }

    private static void collect(JsonNode node, Set<String> keys) {
        node.fieldNames().forEachRemaining(keys::add);
        node.forEach(child -> collect(child, keys));
    }

    @Test
    void aPickListOfTables() {
        String csv = SheetCsv.of(Sheets.ofBuild(order(Answers.cool())));
        assertThat(csv).startsWith("sheet,machines,action,sku,description,lot,supplier,units,line,machine,enclosure,bay\n1,1,pick,BOX,BOX,B1,\"sample shop\",1,,,,\n")
                .contains("1,1,pick,R16,R16,M1,\"sample shop\",8,,,,\n");
        assertThat(SheetCsv.of(Sheets.ofBuild(Answers.order(Answers.ASKED, Answers.cool())))).doesNotContain("labour", "price");
    }

    @Test
    void textSaysItAllWithoutPrices() {
        String text = SheetText.of(Sheets.ofAlternative(order(Answers.cool(), Answers.coolHeavier(), Answers.coolHeavier()), 1), Screen.PLAIN);
        assertThat(text).startsWith("Bench sheet: render node, alternative 1\n").contains("\n2 of 3 machines\n", "\n1 of 3 machines\n", "Parts to pick, for all 2 machines",
                "1A1 (1) R16 16 GB", "1D3 empty", "First slot of a channel: outermost.", "[ ] Put 4 x R16 into slots 1A1, 1B1, 1C1, 1D1.").doesNotContain("EUR", "labour");
        assertThat(text.lines()).allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(Screen.LEAST_WIDTH));
    }

    @Test
    void spansOfChannels() {
        Expected expected = new Expected(2, 20, new SheetView.ExpectedMemory(6, 96, 96, "independent", 2400, List.of(
                new SheetView.Channel("1A", 2, 32), new SheetView.Channel("1B", 1, 16), new SheetView.Channel("1C", 1, 16), new SheetView.Channel("1D", 1, 16),
                new SheetView.Channel("2A", 2, 32), new SheetView.Channel("2B", 1, 16), new SheetView.Channel("2C", 1, 16), new SheetView.Channel("2E", 1, 16))),
                300, OptionalDouble.empty(), List.of(), new TreeMap<>());
        assertThat(SheetWords.expected(expected)).contains(new SheetWords.Row("channels 1A, 2A", "2 modules, 32 GB each"),
                new SheetWords.Row("channels 1B to 1D, 2B, 2C, 2E", "1 module, 16 GB each"));
    }
}
