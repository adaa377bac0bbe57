package sledwright.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.planner.upgrade.BenchStep;
import sledwright.planner.upgrade.BenchStep.Action;
import sledwright.planner.upgrade.BenchStep.Part;
import sledwright.planner.upgrade.Refit;
import sledwright.report.build.BenchText;
import sledwright.samples.Answers;

class BenchWorkTest {

    private static BenchStep module(Action action, String from, String to) {
        return new BenchStep(action, Part.MODULE, "R16", Optional.ofNullable(from), Optional.ofNullable(to));
    }

    @Test
    void aMachineIsPutTogetherFromTheBoardUp() {
        List<BenchStep> steps = BenchWork.of(Answers.hot());
        assertThat(steps).extracting(BenchStep::part).startsWith(Part.PROCESSOR, Part.PROCESSOR, Part.HEAT_SINK, Part.HEAT_SINK, Part.MODULE)
                .endsWith(Part.MODULE, Part.SUPPLY, Part.SUPPLY);
        assertThat(steps).filteredOn(step -> step.part() == Part.MODULE).extracting(step -> step.to().orElseThrow())
                .containsExactly("1A1", "1B1", "1C1", "1D1", "1A2", "1B2", "1C2", "1D2", "2A1", "2B1", "2C1", "2D1", "2A2", "2B2", "2C2", "2D2");
        assertThat(steps).allMatch(step -> step.action() == Action.PUT_IN);
    }

    @Test
    void everyPartOfTheMachineGoesInOnce() {
        Build build = Answers.hot();
        build.partCounts().forEach((sku, units) -> assertThat(BenchWork.of(build).stream().filter(step -> step.sku().equals(sku)))
                .as(sku).hasSize(sku.equals(build.platform().sku()) ? 0 : units));
    }

    @Test
    void aSupplyThatComesBackIsLaidAside() {
        assertThat(BenchText.sentence(new BenchStep(Action.LAY_ASIDE, Part.SUPPLY, "PS-750", Optional.of("supply 1"), Optional.empty())))
                .isEqualTo("Pull PS-750 (supply 1) and lay it aside.");
    }

    /** A module that was laid aside must be back before the next one moves to where it was. */
    @Test
    void nothingPassesAStepThatHasToComeFirst() {
        List<BenchStep> given = List.of(module(Action.LAY_ASIDE, "1A1", null), module(Action.MOVE, "1B1", "1A1"), module(Action.PUT_IN, null, "1B2"),
                module(Action.MOVE, "1C1", "1B1"), module(Action.PUT_IN, null, "1A2"), module(Action.PUT_IN, null, "1C1"));
        assertThat(BenchWork.of(new Refit(1, Answers.hot(), given, false))).containsExactly(given.get(0), given.get(1), given.get(2), given.get(3), given.get(5), given.get(4));
    }
}
