package sledwright.report.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sledwright.domain.Build;
import sledwright.domain.MemoryMode;
import sledwright.domain.Slot;
import sledwright.planner.upgrade.BenchStep;
import sledwright.planner.upgrade.BenchStep.Action;
import sledwright.planner.upgrade.BenchStep.Part;
import sledwright.planner.upgrade.Refit;
import sledwright.report.build.BenchText;
import sledwright.report.build.Precautions;
import sledwright.report.sheet.SheetView.Stage;
import sledwright.report.sheet.SheetView.Work;

/**
 * The work on one machine from the switch to the closed cover, in the order of the work: nobody wears a strap at a machine that
 * may be under power. How parts are handled is common
 * practice, no source; the maker's manual comes before it.
 */
final class Procedure {

    static final String COVER_OFF =
            "With the strap on, take the cover off as the manual shows. Look for loose parts, dust and bent contacts.";
    static final String PROCESSOR =
            "Open the socket as the manual shows. Lower the processor straight down, its mark over the socket's mark, without force; "
            + "touch no contact. Close the socket.";
    static final String MODULE_IN =
            "Open the slot's latches. Turn the module so that its notch meets the key of the slot: it fits one way only. Press both ends "
            + "down evenly until the latches close.";
    static final String MODULE_OUT = "Open both latches and lift the module straight out. Put it into a bag with the name of its slot.";
    static final String MODULE_MOVE = "Open both latches, lift the module straight out and take it to its new slot at once.";
    static final String HEAT_SINK_OFF =
            "Loosen a heat sink in the order that the manual states and turn it a little before it is lifted: the compound sticks, "
            + "and the processor must not come out with it.";
    static final String DRIVE =
            "Fasten drives in their carriers as the manual shows and slide them in until the lever locks. A drive on the board goes into"
            + " its connector at a slant and is held by its screw.";
    static final String CARD =
            "Take off the cover of the slot. Press a card in evenly, without force, until it sits, and screw its bracket down; one for a "
            + "riser goes onto the riser first.";
    static final String EXTRA =
            "Fit fans, air guides, blanks and risers as the manual shows. Tick a licence, a test or carriage when it is settled.";
    static final String SUPPLY = "Slide supplies in until they lock. No cord yet.";
    static final String CLOSE =
            "Count tools and screws: nothing is left inside, no cable lies in a fan. Close the cover as the manual shows.";
    static final String POWER_ON = "Take off the wrist strap. Only then plug in the cords, or slide the sled into its enclosure.";

    private final Build build;
    private final List<BenchStep> steps;
    private final boolean fresh;
    private final List<String> handling = new ArrayList<>();
    private final List<Stage> stages = new ArrayList<>();

    private Procedure(Build build, List<BenchStep> steps, boolean fresh) {
        this.build = build;
        this.steps = steps;
        this.fresh = fresh;
    }

    /** Putting a machine together from nothing. */
    static Work of(Build build, List<BenchStep> steps, MemoryMode mode) {
        return new Procedure(build, steps, true).work(mode, BenchText.touchVolumes(steps));
    }

    /**
     * Changing a machine that stands.
     *
     * @param steps those of the refit in the order of a bench sheet
     * @return nothing to do where nothing changes
     */
    static Work of(Refit refit, List<BenchStep> steps, MemoryMode mode) {
        Procedure procedure = new Procedure(refit.after(), steps, false);
        if (refit.remade()) {
            procedure.handling.addAll(Precautions.DRIVES);
        }
        if (!steps.isEmpty()) {
            return procedure.work(mode, refit.remade() || BenchText.touchVolumes(steps));
        }
        return new Work(procedure.handling, !refit.remade() ? List.of()
                : List.of(new Stage("Volumes", BenchText.volumes(refit.after().fitout(), true, false))));
    }

    private Work work(MemoryMode mode, boolean volumes) {
        stages.add(new Stage("Power off", List.of(Precautions.POWER_OFF, Precautions.HOT)));
        stages.add(new Stage("Static", List.of(Precautions.STATIC, Precautions.BAGS)));
        stages.add(new Stage("Open", List.of(COVER_OFF)));
        groups().forEach(this::addGroup);
        stages.add(new Stage("Close", List.of(CLOSE, POWER_ON)));
        String set = mode == MemoryMode.INDEPENDENT ? "" : "Set the memory mode to %s in the firmware. ".formatted(mode.label());
        List<String> start = new ArrayList<>();
        start.add(set + "Compare what the firmware shows with the table of what is expected, then run a memory test.");
        start.addAll(BenchText.volumes(build.fitout(), volumes, fresh));
        stages.add(new Stage("First start", start));
        return new Work(handling, stages);
    }

    /** Steps of one kind that follow each other; modules that go in, socket by socket. */
    private List<List<BenchStep>> groups() {
        List<List<BenchStep>> groups = new ArrayList<>();
        String last = "";
        for (BenchStep step : steps) {
            if (!title(step).equals(last)) {
                groups.add(new ArrayList<>());
            }
            groups.get(groups.size() - 1).add(step);
            last = title(step);
        }
        return groups;
    }

    private String title(BenchStep step) {
        boolean out = step.action() == Action.TAKE_OUT || step.action() == Action.LAY_ASIDE;
        boolean move = step.action() == Action.MOVE;
        return switch (step.part()) {
            case SUPPLY -> out ? "Power supplies out" : "Power supplies";
            case PROCESSOR -> out ? "Processors out" : "Processors";
            case HEAT_SINK -> out ? "Heat sinks off" : "Heat sinks";
            case DRIVE -> out ? "Drives out" : move ? "Drives that move" : "Drives";
            case CARD -> out ? "Cards out" : move ? "Cards that move" : "Cards";
            case CABLE -> "Cables of drives";
            case EXTRA -> out ? "Extras off" : "Extras";
            case MODULE -> out ? "Modules out" : move ? "Modules that move" : "Modules into socket " + socket(step);
        };
    }

    /** What a volume is to be; bays are identified by the names of their group. */
    private int socket(BenchStep step) {
        return build.platform().board().slot(step.to().orElseThrow()).orElseThrow().socket() + 1;
    }

    private void addGroup(List<BenchStep> group) {
        BenchStep first = group.get(0);
        boolean in = first.action() == Action.PUT_IN;
        handling(first, in).stream().filter(words -> !handling.contains(words)).forEach(handling::add);
        List<String> texts = new ArrayList<>(before(first, in));
        texts.addAll(BenchText.sentences(group));
        texts.addAll(after(first, in));
        stages.add(new Stage(title(first), texts));
    }

    private List<String> handling(BenchStep first, boolean in) {
        return switch (first.part()) {
            case PROCESSOR -> in ? List.of(PROCESSOR) : List.of();
            case MODULE -> in ? List.of(MODULE_IN) : first.action() == Action.MOVE ? List.of(MODULE_MOVE, MODULE_IN) : List.of(MODULE_OUT);
            case HEAT_SINK -> in ? List.of() : List.of(HEAT_SINK_OFF);
            case SUPPLY -> in ? List.of(SUPPLY) : List.of();
            case DRIVE, CABLE -> Stream.concat(fresh ? Stream.of() : Precautions.DRIVES.stream(),
                    first.part() == Part.DRIVE && in ? Stream.of(DRIVE) : Stream.of()).toList();
            case CARD -> in ? List.of(CARD) : List.of();
            case EXTRA -> in ? List.of(EXTRA) : List.of();
        };
    }

    /** What is done first of all. */
    private static List<String> before(BenchStep first, boolean in) {
        return first.part() == Part.HEAT_SINK && in ? Precautions.HEAT_SINKS : List.of();
    }

    private List<String> after(BenchStep first, boolean in) {
        if (first.part() == Part.PROCESSOR && in) {
            return IntStream.rangeClosed(build.processors().size() + 1, build.platform().board().sockets())
                    .mapToObj("Socket %s stays empty: leave its cap on and its slots free."::formatted).toList();
        }
        if (first.part() == Part.HEAT_SINK && in) {
            List<String> covered = build.platform().covered(build.cooling()).stream()
                    .filter(slot -> slot.socket() < build.processors().size()).sorted()
                    .map(Slot::name).toList();
            return covered.isEmpty() ? List.of()
                    : List.of("The heat sinks cover %s: nothing goes in there.".formatted(String.join(", ", covered)));
        }
        if (first.part() == Part.MODULE && in) {
            int socket = socket(first);
            long modules = build.modules().keySet().stream().filter(slot -> slot.socket() + 1 == socket).count();
            return List.of("Socket %s: %s %s, every latch closed, all at one height."
                    .formatted(socket, modules, modules == 1 ? "module" : "modules"));
        }
        return List.of();
    }
}
