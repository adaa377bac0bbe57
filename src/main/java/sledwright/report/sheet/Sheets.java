package sledwright.report.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sledwright.desk.view.BareMachine;
import sledwright.desk.view.BenchWork;
import sledwright.desk.view.Line;
import sledwright.desk.view.Lines;
import sledwright.desk.view.SheetAnswer;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Drive;
import sledwright.domain.Housed;
import sledwright.domain.MemoryMode;
import sledwright.domain.Part;
import sledwright.domain.Request;
import sledwright.domain.Volume;
import sledwright.metrics.Figures;
import sledwright.planner.upgrade.BenchStep;
import sledwright.planner.upgrade.BenchStep.Action;
import sledwright.planner.upgrade.Plan;
import sledwright.planner.upgrade.Refit;
import sledwright.planner.upgrade.Upgrade;
import sledwright.report.build.MachineCells;
import sledwright.report.build.Precautions;
import sledwright.report.sheet.BoardView.Side;
import sledwright.report.sheet.SheetView.Boards;
import sledwright.report.sheet.SheetView.Channel;
import sledwright.report.sheet.SheetView.Checked;
import sledwright.report.sheet.SheetView.Drives;
import sledwright.report.sheet.SheetView.Expected;
import sledwright.report.sheet.SheetView.ExpectedMemory;
import sledwright.report.sheet.SheetView.Fields;
import sledwright.report.sheet.SheetView.Machine;
import sledwright.report.sheet.SheetView.Moved;
import sledwright.report.sheet.SheetView.Pulled;
import sledwright.report.sheet.SheetView.Sheet;
import sledwright.report.sheet.SheetView.Source;
import sledwright.report.sheet.SheetView.Which;
import sledwright.rules.Order;

/** Makes sheets of valid orders and of upgrades. */
public final class Sheets {

    static final List<String> CAUTIONS = List.of(Precautions.MANUALS, Precautions.ORDER);
    private static final String WHOLE = "Buying whole costs less than this upgrade. Ask the person who ordered it before the work begins.";

    private final Request request;
    private final Catalog catalog;
    private final PickList picks;

    private Sheets(Order order) {
        this(order.request(), order.catalog(),
                Lines.of(order).stream().filter(line -> line.kind() == Line.Kind.PART && !line.isInstalled()).toList());
    }

    /** @param parts that machines are made from */
    Sheets(Request request, Catalog catalog, List<Line> parts) {
        this.request = request;
        this.catalog = catalog;
        picks = new PickList(parts);
    }

    public static SheetView of(SheetAnswer.Work work) {
        if (work instanceof SheetAnswer.Change change) {
            return ofUpgrade(change.plan(), change.upgrade());
        }
        if (work instanceof SheetAnswer.Machines machines) {
            return new OrderSheets(machines.order(), machines.shop()).view();
        }
        SheetAnswer.Assembly assembly = (SheetAnswer.Assembly) work;
        return assembly.rank().isPresent() ? ofAlternative(assembly.order(), assembly.rank().getAsInt()) : ofBuild(assembly.order());
    }

    /** The sheets of a build that somebody drew up. */
    static SheetView ofBuild(Order order) {
        return of(order, Source.BUILD, OptionalInt.empty());
    }

    /** The sheets of one alternative of a quote. */
    static SheetView ofAlternative(Order order, int rank) {
        return of(order, Source.QUOTE, OptionalInt.of(rank));
    }

    private static SheetView of(Order order, Source source, OptionalInt rank) {
        Sheets sheets = new Sheets(order);
        Map<Build, Integer> kinds = new LinkedHashMap<>();
        order.machines().forEach(build -> kinds.merge(build, 1, Integer::sum));
        List<Sheet> made = new ArrayList<>();
        kinds.entrySet().stream().sorted(Comparator.comparingDouble(kind -> -sheets.figures(kind.getKey()).loadW()))
                .forEach(kind -> made.add(sheets.fresh(kind.getKey(), kind.getValue(),
                        made.isEmpty() ? order.housed() : Optional.empty(), Optional.empty())));
        return new SheetView(order.request().name(), source, rank, made, Optional.empty(), Optional.empty());
    }

    /** The sheets of machines that are upgraded. */
    static SheetView ofUpgrade(Plan plan, Upgrade upgrade) {
        Sheets sheets = new Sheets(plan.order());
        return new SheetView(plan.order().request().name(), Source.UPGRADE, OptionalInt.empty(),
                plan.refits().stream().map(refit -> sheets.changed(refit, upgrade.installed().build())).toList(), Optional.empty(),
                upgrade.wholeIsCheaper() ? Optional.of(WHOLE) : Optional.empty());
    }

    private Figures figures(Build build) {
        return Figures.of(build, request, catalog.throughputFactors());
    }

    /**
     * @param housed the enclosures of all machines, where they are picked with these
     * @param which  of an order, the machine
     */
    Sheet fresh(Build build, int machines, Optional<Housed> housed, Optional<Which> which) {
        List<BenchStep> steps = BenchWork.of(build);
        SortedMap<String, Integer> needed = times(build.partCounts(), machines);
        housed.ifPresent(enclosures -> enclosures.partCounts().forEach((sku, units) -> needed.merge(sku, units, Integer::sum)));
        return new Sheet(machines, which, machine(build), new Moved(picks.take(needed, this::description), List.of()),
                new Boards(Optional.empty(), BoardView.of(build, steps)), Procedure.of(build, steps, mode()),
                new Checked(expected(build), records(steps)));
    }

    private Sheet changed(Refit refit, Build before) {
        List<BenchStep> steps = BenchWork.of(refit);
        Build after = refit.after();
        SortedMap<String, Integer> added = surplus(after, before);
        List<Pulled> pulled = new ArrayList<>();
        times(surplus(before, after), refit.machines()).forEach((sku, units) -> pulled.add(new Pulled(sku, description(sku), units)));
        return new Sheet(refit.machines(), Optional.empty(), machine(after),
                new Moved(picks.take(times(added, refit.machines()), this::description), pulled),
                new Boards(Optional.of(BoardView.of(before, steps, Side.BEFORE)), BoardView.of(after, steps, Side.AFTER)),
                Procedure.of(refit, steps, mode()), new Checked(expected(after), records(steps)));
    }

    /** What is written down of a machine: which part stands where is asked of those that go in. */
    private static List<Fields> records(List<BenchStep> steps) {
        List<Fields> records = new ArrayList<>();
        records.add(new Fields("Machine", List.of("Serial number", "Built by, date", "Checked by, date")));
        serials("Serial numbers of processors", BenchStep.Part.PROCESSOR, steps).ifPresent(records::add);
        serials("Serial numbers of modules", BenchStep.Part.MODULE, steps).ifPresent(records::add);
        serials("Serial numbers of drives", BenchStep.Part.DRIVE, steps).ifPresent(records::add);
        serials("Serial numbers of cards", BenchStep.Part.CARD, steps).ifPresent(records::add);
        records.add(new Fields("Firmware", List.of("Version found", "Version left")));
        records.add(new Fields("Memory test", List.of("Program, version", "Passes", "Errors")));
        return records;
    }

    private static Optional<Fields> serials(String title, BenchStep.Part part, List<BenchStep> steps) {
        List<String> places = steps.stream().filter(step -> step.part() == part && step.action() == Action.PUT_IN)
                .map(step -> step.to().orElseThrow()).toList();
        return places.isEmpty() ? Optional.empty() : Optional.of(new Fields(title, places));
    }

    private MemoryMode mode() {
        return request.require().mode();
    }

    private String description(String sku) {
        return catalog.part(sku).map(Part::description).orElse(sku);
    }

    private static SortedMap<String, Integer> times(SortedMap<String, Integer> parts, int machines) {
        SortedMap<String, Integer> all = new TreeMap<>();
        parts.forEach((sku, units) -> all.put(sku, units * machines));
        return all;
    }

    /** The parts of one machine that another does not have. */
    private static SortedMap<String, Integer> surplus(Build one, Build other) {
        Map<String, Integer> against = other.partCounts();
        return one.partCounts().entrySet().stream().filter(part -> part.getValue() > against.getOrDefault(part.getKey(), 0))
                .collect(Collectors.toMap(Map.Entry::getKey, part -> part.getValue() - against.getOrDefault(part.getKey(), 0), Integer::sum,
                TreeMap::new));
    }

    private static Drives drives(Volume volume) {
        return new Drives(volume.name(), volume.level().number(), volume.drives().size(), volume.hotSpares().size(),
                volume.drives().stream().mapToDouble(Drive::capacityGb).min().orElse(0), volume.usableGb());
    }

    private static Machine machine(Build build) {
        return new Machine(BareMachine.of(build), MachineCells.enclosures(build.fitout()));
    }

    private Expected expected(Build build) {
        Figures figures = figures(build);
        List<Channel> channels = build.channels().stream().filter(channel -> !channel.filled().isEmpty())
                .map(channel -> new Channel(channel.name(), channel.filled().size(), channel.capacityGb())).toList();
        SortedMap<String, String> cards = new TreeMap<>();
        build.fitout().cards().forEach((slot, card) -> cards.put(slot, card.sku()));
        return new Expected(figures.processors(), figures.cores(), new ExpectedMemory(build.modules().size(), figures.memoryGb(),
                figures.usableGb(), mode().label(), figures.speed().mts(), channels), figures.loadW(), figures.wallW(),
                build.fitout().volumes().stream().map(Sheets::drives).toList(), cards);
    }
}
