package sledwright.report.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.domain.RaidLevel;
import sledwright.domain.MemoryMode;
import sledwright.planner.upgrade.BenchStep;
import sledwright.planner.upgrade.BenchStep.Action;
import sledwright.planner.upgrade.BenchStep.Part;
import sledwright.planner.upgrade.Refit;
import sledwright.report.build.Precautions;
import sledwright.samples.Equipped;

/** The stages of work on drives, cards and extras. */
class ProcedureTest {

    private static BenchStep step(Action action, Part part, String place) {
        Optional<String> from = action == Action.PUT_IN ? Optional.empty() : Optional.of(place);
        Optional<String> to = action == Action.PUT_IN || action == Action.MOVE ? Optional.of(place + "b") : Optional.empty();
        return new BenchStep(action, part, part.label().toUpperCase(java.util.Locale.ROOT), from, to);
    }

    @Test
    void drivesCardsAndExtrasHaveStagesOfTheirOwn() {
        Build build = Equipped.machine().build();
        List<BenchStep> steps = List.of(step(Action.TAKE_OUT, Part.DRIVE, "front 1"), step(Action.MOVE, Part.DRIVE, "front 2"),
                step(Action.TAKE_OUT, Part.CARD, "X1"), step(Action.TAKE_OUT, Part.EXTRA, "machine"), step(Action.PUT_IN, Part.EXTRA, "machine"),
                step(Action.MOVE, Part.CARD, "X2"), step(Action.PUT_IN, Part.CARD, "X3"), step(Action.PUT_IN, Part.DRIVE, "front 4"),
                step(Action.PUT_IN, Part.CABLE, "X3"));
        SheetView.Work work = Procedure.of(new Refit(1, build, steps, false), steps, MemoryMode.INDEPENDENT);
        assertThat(work.stages()).extracting(SheetView.Stage::title).containsExactly("Power off", "Static", "Open", "Drives out", "Drives that move", "Cards out",
                "Extras off", "Extras", "Cards that move", "Cards", "Drives", "Cables of drives", "Close", "First start");
        assertThat(work.handling()).containsExactly(Precautions.DRIVES.get(0), Procedure.EXTRA, Procedure.CARD, Procedure.DRIVE);
        assertThat(Precautions.DRIVES).containsExactly("Before drives come out, change their volume or hang on another driver, save what they hold and try"
                + " whether it can be read back: a volume that is made again is empty, and one driver may not read what another wrote.");
    }

    @Test
    void aVolumeThatIsMadeAnewNeedsNoOpenMachine() {
        Build build = Equipped.machine().with(fitout -> fitout.volume("system", RaidLevel.LEVEL_1, "front", 2, Equipped.SSD, 0)).build();
        SheetView.Work work = Procedure.of(new Refit(1, build, List.of(), true), List.of(), MemoryMode.INDEPENDENT);
        assertThat(work.handling()).isEqualTo(Precautions.DRIVES);
        assertThat(work.stages()).singleElement().satisfies(stage -> {
            assertThat(stage.title()).isEqualTo("Volumes");
            assertThat(stage.steps()).isNotEmpty().allMatch(step -> step.endsWith("Set it up only where it is not so yet: that empties its drives."));
        });
        assertThat(Procedure.of(new Refit(1, build, List.of(), false), List.of(), MemoryMode.INDEPENDENT).stages()).isEmpty();
    }
}
