package sledwright.report.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sledwright.catalog.CatalogReader;
import sledwright.desk.view.BenchWork;
import sledwright.domain.Build;
import sledwright.samples.Equipped;
import sledwright.domain.RaidLevel;
import sledwright.domain.FormFactor;
import sledwright.domain.DriveKind;
import sledwright.domain.DriveInterface;
import sledwright.domain.Drive;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.MemoryModule;
import sledwright.domain.Platform;
import sledwright.domain.Slot;
import sledwright.input.Faults;
import sledwright.planner.upgrade.BenchStep;
import sledwright.planner.upgrade.BenchStep.Action;
import sledwright.planner.upgrade.BenchStep.Part;
import sledwright.report.sheet.BoardDrawing.Captioned;
import sledwright.report.sheet.BoardView.Place;
import sledwright.report.sheet.BoardView.Side;
import sledwright.report.sheet.BoardView.State;
import sledwright.report.sheet.Shape.Area;
import sledwright.report.sheet.Shape.Look;
import sledwright.report.sheet.Shape.Words;
import sledwright.samples.PlatformSketch;
import sledwright.samples.Samples;

/** Every board is drawn whole: each slot once, nothing over anything else, nothing outside, every text in its place and in full. */
class BoardDrawingTest {

    private static final double HAIR = 1e-6;
    private static final MemoryModule SMALL = Samples.module("NV4R32-24-24", 32).make();
    private static final MemoryModule LARGE = Samples.module("BR4R128-14-24", 128).make();

    /** A shape of board. */
    record Shaped(int sockets, int channels, int depth) {
    }

    static Stream<Shaped> shapes() {
        return IntStream.rangeClosed(1, 4).boxed().flatMap(sockets -> IntStream.rangeClosed(2, 12).boxed()
                .flatMap(channels -> IntStream.rangeClosed(1, 3).mapToObj(depth -> new Shaped(sockets, channels, depth))));
    }

    static Stream<Platform> demoPlatforms() {
        Faults faults = new Faults();
        Catalog shop = CatalogReader.read(Path.of("catalogs/heronfold-yard"), faults).orElseThrow();
        return shop.platforms().stream();
    }

    private static Platform platform(Shaped shape, List<String> names) {
        Platform bare = sketch(shape, names).make();
        List<String> last = IntStream.range(0, shape.sockets).mapToObj(socket -> bare.board().slot(socket, shape.channels - 1, shape.depth - 1).name()).toList();
        return sketch(shape, names).cooling(new CoolingKit("LONG-HEAT-SINK-86", "long heat sink", 150, last)).make();
    }

    private static PlatformSketch sketch(Shaped shape, List<String> names) {
        return Samples.platform().counts(IntStream.rangeClosed(1, shape.sockets).boxed().toArray(Integer[]::new)).channels(shape.channels, shape.depth)
                .slotNames(names);
    }

    /** All channels but the last, the first slot small, a second one large; the last socket without processor where there are several. */
    private static Build half(Platform platform) {
        int sockets = platform.board().sockets();
        int channels = Math.max(1, platform.board().channels() - 1);
        var sketch = Samples.machine(platform).processors(Math.max(1, sockets - 1), Samples.P10);
        return (platform.board().slotsPerChannel() == 1 ? sketch.channels(channels, SMALL) : sketch.channels(channels, SMALL, LARGE)).build();
    }

    private static Build full(Platform platform) {
        MemoryModule[] stack = Collections.nCopies(platform.board().slotsPerChannel(), LARGE).toArray(MemoryModule[]::new);
        CoolingKit plain = new CoolingKit("HS", "heat sink", 150, List.of());
        Build build = Samples.machine(platform).processors(platform.board().sockets(), Samples.P10).channels(platform.board().channels(), stack).build();
        return new Build(platform, build.processors(), plain, build.supply(), build.modules());
    }

    private static BoardDrawing drawn(Build build) {
        return BoardDrawing.of(List.of(new Captioned("", BoardView.of(build, BenchWork.of(build)))));
    }

    /** Both ends of a work in one board: its first module leaves, its second moves to the first's slot, the second's slot is filled again. */
    private static List<Captioned> changed(Build before) {
        List<Slot> filled = List.copyOf(before.modules().keySet());
        SortedMap<Slot, MemoryModule> modules = new TreeMap<>(before.modules());
        List<BenchStep> steps = new ArrayList<>();
        MemoryModule first = before.modules().get(filled.get(0));
        MemoryModule second = before.modules().get(filled.get(1));
        modules.put(filled.get(0), second);
        modules.put(filled.get(1), LARGE);
        steps.add(step(Action.TAKE_OUT, Part.MODULE, first.sku(), filled.get(0).name(), null));
        steps.add(step(Action.TAKE_OUT, Part.PROCESSOR, "P10", "socket 1", null));
        steps.add(step(Action.MOVE, Part.MODULE, second.sku(), filled.get(1).name(), filled.get(0).name()));
        steps.add(step(Action.PUT_IN, Part.PROCESSOR, "P10", null, "socket 1"));
        steps.add(step(Action.PUT_IN, Part.MODULE, LARGE.sku(), null, filled.get(1).name()));
        Build after = new Build(before.platform(), before.processors(), before.cooling(), before.supply(), modules);
        return List.of(new Captioned("an upgrade", BoardView.ofBoth(BoardView.of(before, steps, Side.BEFORE), BoardView.of(after, steps, Side.AFTER))));
    }

    private static BenchStep step(Action action, Part part, String sku, String from, String to) {
        return new BenchStep(action, part, sku, Optional.ofNullable(from), Optional.ofNullable(to));
    }

    private static void assertSound(BoardDrawing drawing, List<BoardView> boards) {
        List<Place> places = boards.stream().flatMap(board -> board.places().stream()).toList();
        assertThat(drawing.slots().stream().map(BoardDrawing.Slot::place).toList()).as("every slot once, in board order").isEqualTo(places);
        Box paper = new Box(0, 0, BoardGrid.WIDTH, drawing.height());
        assertThat(drawing.shapes()).allMatch(shape -> holds(paper, shape.box()));
        List<Box> cells = drawing.slots().stream().map(BoardDrawing.Slot::box).toList();
        assertApart(cells);
        List<Box> panels = areas(drawing, Look.PANEL);
        assertThat(panels).hasSize(boards.stream().mapToInt(board -> board.sockets().size()).sum());
        assertApart(panels);
        List<Box> grounds = areas(drawing, Look.BOARD);
        assertThat(grounds).hasSameSizeAs(boards);
        assertApart(grounds);
        panels.forEach(panel -> assertThat(grounds).anyMatch(ground -> holds(ground, panel)));
        cells.forEach(cell -> assertThat(panels).anyMatch(panel -> holds(panel, cell)));
        drawing.slots().forEach(BoardDrawingTest::assertTextsInTheirPlace);
        Set<Shape> inside = Collections.newSetFromMap(new IdentityHashMap<>());
        drawing.slots().forEach(slot -> inside.addAll(slot.shapes()));
        List<Box> around = drawing.shapes().stream().filter(shape -> shape instanceof Words && !inside.contains(shape)).map(Shape::box).toList();
        assertApart(around);
        assertThat(around).noneMatch(words -> cells.stream().anyMatch(cell -> overlap(words, cell)));
        drawing.shapes().stream().filter(Words.class::isInstance).map(Words.class::cast)
                .forEach(words -> assertThat(words.text()).as("in full").isNotEmpty().doesNotContain(".."));
    }

    private static void assertTextsInTheirPlace(BoardDrawing.Slot slot) {
        assertThat(slot.shapes()).as("slot %s", slot.place().name()).allMatch(shape -> holds(slot.box(), shape.box()));
        // A number stands in its circle and a mark in its tag; else nothing touches.
        assertApart(slot.shapes().stream().filter(Words.class::isInstance).map(Shape::box).toList());
        List<Box> areas = slot.shapes().stream().filter(Area.class::isInstance).map(Shape::box).toList();
        assertApart(areas);
        areas.forEach(area -> assertThat(slot.shapes()).filteredOn(shape -> shape instanceof Words && overlap(shape.box(), area)).hasSize(1)
                .allMatch(words -> holds(area, words.box())));
    }

    private static boolean holds(Box box, Box other) {
        return other.x() >= box.x() - HAIR && other.y() >= box.y() - HAIR && other.right() <= box.right() + HAIR && other.bottom() <= box.bottom() + HAIR;
    }

    static boolean overlap(Box box, Box other) {
        return box.x() < other.right() - HAIR && other.x() < box.right() - HAIR && box.y() < other.bottom() - HAIR && other.y() < box.bottom() - HAIR;
    }

    private static List<Box> areas(BoardDrawing drawing, Look look) {
        return drawing.shapes().stream().filter(shape -> shape instanceof Area area && area.look() == look).map(Shape::box).toList();
    }

    private static void assertApart(List<Box> boxes) {
        List<String> over = new ArrayList<>();
        for (int i = 0; i < boxes.size(); i++) {
            for (int j = 0; j < i; j++) {
                if (overlap(boxes.get(i), boxes.get(j))) {
                    over.add("%s over %s".formatted(boxes.get(i), boxes.get(j)));
                }
            }
        }
        assertThat(over).isEmpty();
    }

    private static List<BoardView> boards(Build build) {
        return List.of(BoardView.of(build, BenchWork.of(build)));
    }

    private static List<String> words(BoardDrawing drawing) {
        return drawing.shapes().stream().filter(Words.class::isInstance).map(shape -> ((Words) shape).text()).toList();
    }

    @Test
    void baysAndSlotsOfAMachineWithDrivesAndCards() {
        Build build = Equipped.machine().with(fitout -> fitout.volume("system", RaidLevel.LEVEL_1, "front", 2, Equipped.SSD, 1)
                .volume("cache", RaidLevel.LEVEL_1, "fast", 2, Equipped.NVME, 0).driver("X1").card("X1", Equipped.CONTROLLER).card("X2", Equipped.NET)
                .extra(Equipped.RISER, 1)).build();
        BoardDrawing drawing = BoardDrawing.of(List.of(new Captioned("", boards(build).get(0))));
        assertThat(words(drawing)).contains("Bays front", "front 1", "SSD-480", "system", "front 3", "system, spare", "4 to 8", "empty", "Bays fast", "of socket 2",
                "fast 2", "NV-1600", "Cards", "X1", "CTL-8", "x16, socket 1", "X2", "NET-2X10", "x8, socket 2", "on a riser");
        assertThat(String.join(" ", words(drawing))).contains("On riser RISER-2: X2.");
        Box paper = new Box(0, 0, BoardGrid.WIDTH, drawing.height());
        assertThat(drawing.shapes()).allMatch(shape -> holds(paper, shape.box()));
        assertApart(drawing.shapes().stream().filter(Words.class::isInstance).map(Shape::box).toList());
        assertThat(SheetWords.description(boards(build).get(0))).endsWith("Bay front 1 SSD-480, bay front 2 SSD-480, bay front 3 SSD-480, bay fast 1 NV-1600,"
                + " bay fast 2 NV-1600, slot X1 CTL-8, slot X2 NET-2X10.");
    }

    @Test
    void whatHangsOnAnEmptySocketSaysSo() {
        Build one = Equipped.machineOfOne().with(fitout -> fitout.card("X1", Equipped.NET)).build();
        BoardDrawing drawing = BoardDrawing.of(List.of(new Captioned("", boards(one).get(0))));
        assertThat(words(drawing)).contains("X2", "x8, socket 2").doesNotContain("Bays front", "Bays fast");
        EquipmentView equipment = boards(one).get(0).equipment();
        assertThat(equipment.cards()).extracting(EquipmentView.CardPlace::state).containsExactly(State.FILLED, State.NO_PROCESSOR);
        assertThat(equipment.seats()).extracting(EquipmentView.Seat::state).startsWith(State.EMPTY).endsWith(State.NO_PROCESSOR);
        assertThat(boards(Equipped.machine().build()).get(0).equipment().isBlank()).isTrue();
    }

    @Test
    void whatAnUpgradeDoesWithDrivesAndCardsIsMarked() {
        Build before = Equipped.machine().with(fitout -> fitout.volume("system", RaidLevel.LEVEL_1, "front", 2, Equipped.SSD, 0).card("X1", Equipped.NET)).build();
        Build after = Equipped.machine().with(fitout -> fitout.volume("system", RaidLevel.LEVEL_1, "front", 2, Equipped.BIG_SSD, 0).card("X1", Equipped.CONTROLLER)
                .card("X2", Equipped.NET).extra(Equipped.RISER, 1)).build();
        List<BenchStep> steps = List.of(step(Action.TAKE_OUT, Part.DRIVE, "SSD-480", "front 1", null), step(Action.TAKE_OUT, Part.DRIVE, "SSD-480", "front 2", null),
                step(Action.MOVE, Part.CARD, "NET-2X10", "X1", "X2"), step(Action.PUT_IN, Part.CARD, "CTL-8", null, "X1"),
                step(Action.PUT_IN, Part.DRIVE, "SSD-960", null, "front 1"), step(Action.PUT_IN, Part.DRIVE, "SSD-960", null, "front 2"));
        BoardDrawing drawing = BoardDrawing.of(List.of(new Captioned("",
                BoardView.ofBoth(BoardView.of(before, steps, Side.BEFORE), BoardView.of(after, steps, Side.AFTER)))));
        assertThat(words(drawing)).containsSubsequence("front 1", "IN", "SSD-960", "system", "SSD-480", "OUT").containsSubsequence("X1", "IN", "CTL-8", "NET-2X10", "\u2192X2",
                "X2", "\u2190X1", "NET-2X10");
        assertApart(drawing.shapes().stream().filter(Words.class::isInstance).map(Shape::box).toList());
    }

    @Test
    void keysStandForLongPartNumbersOfDrivesAndCards() {
        Drive wordy = Equipped.drive("W".repeat(40), DriveKind.SSD, DriveInterface.SATA, FormFactor.SMALL, 480, 3);
        Build build = Equipped.machine().with(fitout -> fitout.volume("system", RaidLevel.LEVEL_0, "front", wordy).card("X1", Equipped.NET)).build();
        assertThat(words(BoardDrawing.of(List.of(new Captioned("", boards(build).get(0)))))).contains("P1", "P2", "P1: " + wordy.sku(), "P2: NET-2X10");
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void boardsOfEveryShape(Shaped shape) {
        Platform platform = platform(shape, List.of());
        assertSound(drawn(half(platform)), boards(half(platform)));
        Build full = full(platform);
        BoardDrawing drawing = drawn(full);
        assertSound(drawing, boards(full));
        // A sheet of paper is 1.49 times as high as it is wide between its margins.
        assertThat(drawing.height()).isLessThan(1.49 * BoardGrid.WIDTH);
        List<Captioned> both = changed(full);
        assertSound(BoardDrawing.of(both), both.stream().map(Captioned::board).toList());
    }

    @ParameterizedTest
    @MethodSource("demoPlatforms")
    void boardsOfTheDemo(Platform platform) {
        for (CoolingKit kit : platform.cooling()) {
            Build build = half(platform);
            Build cooled = new Build(platform, build.processors(), kit, build.supply(), build.modules());
            assertSound(drawn(cooled), boards(cooled));
        }
    }

    @Test
    void longNamesOfTheBoardsOwn() {
        Shaped shape = new Shaped(2, 8, 2);
        List<String> names = IntStream.range(0, 32).mapToObj("SLOT_%03d"::formatted).toList();
        Platform platform = platform(shape, names);
        assertSound(drawn(half(platform)), boards(half(platform)));
    }

    @Test
    void namesTooLongForAnyRoomAreCutAndStayInTheirPlace() {
        List<String> names = IntStream.range(0, 24).mapToObj(number -> "THE-BOARDS-OWN-NAME-OF-ITS-SLOT-WITH-THE-NUMBER-%02d".formatted(number)).toList();
        Build build = half(platform(new Shaped(2, 4, 3), names));
        BoardDrawing drawing = drawn(build);
        drawing.slots().forEach(BoardDrawingTest::assertTextsInTheirPlace);
        assertThat(texts(drawing.slots().get(3))).anyMatch(words -> words.startsWith("THE-") && words.endsWith("03") && words.contains(".."));
    }

    @Test
    void statesAndOrderAreWritten() {
        Build build = half(platform(new Shaped(2, 3, 2), List.of()));
        Map<String, List<String>> texts = new TreeMap<>();
        drawn(build).slots().forEach(slot -> texts.put(slot.place().name(), texts(slot)));
        assertThat(texts.get("1A1")).containsExactly("1", "1A1", "32 GB", "NV4R32-24-24");
        assertThat(texts.get("1B1")).contains("2");
        assertThat(texts.get("1A2")).contains("3", "128 GB");
        assertThat(texts.get("1C1")).containsExactly("1C1", "empty");
        assertThat(texts.get("1C2")).containsExactly("1C2", "covered");
        assertThat(texts.get("2C2")).containsExactly("2C2", "no processor");
    }

    @Test
    void marksTellWhatIsDone() {
        BoardDrawing drawing = BoardDrawing.of(changed(half(platform(new Shaped(1, 4, 2), List.of()))));
        List<List<String>> texts = drawing.slots().stream().map(BoardDrawingTest::texts).toList();
        assertThat(texts).hasSize(8);
        assertThat(texts.get(0)).contains("1A1", "\u21901A2", "OUT").doesNotContain("1");
        assertThat(texts.get(1)).contains("1A2", "IN", "1", "\u21921A1");
        assertThat(texts.get(2)).doesNotContain("IN", "OUT");
        List<String> all = drawing.shapes().stream().filter(Words.class::isInstance).map(shape -> ((Words) shape).text()).toList();
        assertThat(all).contains("processor P10").anyMatch(words -> words.contains("(goes to) mark what"));
    }

    @Test
    void keysStandForPartNumbersWhereTheseWouldTakeTooMuchRoom() {
        MemoryModule longNamed = Samples.module("A-PART-NUMBER-OF-MANY-LETTERS-32", 32).make();
        Platform platform = platform(new Shaped(2, 6, 3), List.of());
        BoardDrawing drawing = drawn(Samples.machine(platform).channels(5, longNamed).build());
        List<String> all = drawing.shapes().stream().filter(Words.class::isInstance).map(shape -> ((Words) shape).text()).toList();
        assertThat(all).contains("M1").contains("M1: A-PART-NUMBER-OF-MANY-LETTERS-32, 32 GB 2Rx4 RDIMM at 2400 MT/s");
        assertThat(texts(drawing.slots().get(0))).containsExactly("1", "1A1", "32 GB", "M1");
    }

    private static List<String> texts(BoardDrawing.Slot slot) {
        return slot.shapes().stream().filter(Words.class::isInstance).map(shape -> ((Words) shape).text()).toList();
    }

    @Test
    void aModuleWhereNoneShouldBeIsShownAsItStands() {
        Platform platform = platform(new Shaped(1, 2, 2), List.of());
        Build wrong = Samples.machine(platform).processors(1, Samples.P10).slot("1B2", SMALL).build();
        assertThat(BoardView.of(wrong, List.of(), Side.BEFORE).places().get(3).state()).isEqualTo(State.FILLED);
    }
}
