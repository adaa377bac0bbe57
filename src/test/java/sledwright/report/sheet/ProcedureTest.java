package sledwright.report.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.domain.MemoryMode;
import sledwright.planner.upgrade.BenchStep;
import sledwright.planner.upgrade.BenchStep.Action;
import sledwright.planner.upgrade.BenchStep.Part;
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
        SheetView.Work work = Procedure.of(build, List.of(step(Action.TAKE_OUT, Part.DRIVE, "front 1"), step(Action.MOVE, Part.DRIVE, "front 2"),
                step(Action.TAKE_OUT, Part.CARD, "X1"), step(Action.TAKE_OUT, Part.EXTRA, "machine"), step(Action.PUT_IN, Part.EXTRA, "machine"),
                step(Action.MOVE, Part.CARD, "X2"), step(Action.PUT_IN, Part.CARD, "X3"), step(Action.PUT_IN, Part.DRIVE, "front 4"),
                step(Action.PUT_IN, Part.CABLE, "X3")), MemoryMode.INDEPENDENT, false);
        assertThat(work.stages()).extracting(SheetView.Stage::title).containsExactly("Power off", "Static", "Open", "Drives out", "Drives that move", "Cards out",
                "Extras off", "Extras", "Cards that move", "Cards", "Drives", "Cables of drives", "Close", "First start");
        assertThat(work.handling()).containsExactly(Precautions.DRIVES.get(0), Procedure.EXTRA, Procedure.CARD, Procedure.DRIVE);
        assertThat(Precautions.DRIVES).containsExactly("Before drives come out, change their volume or hang on another driver, save what they hold and try"
                + " whether it can be read back: a volume that is made again is empty, and one driver may not read what another wrote.");
    }
}
