package sledwright.report.restock;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sledwright.desk.view.RestockView;
import sledwright.generator.time.Deadline;
import sledwright.input.Source;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;
import sledwright.restock.RestockPlan;
import sledwright.restock.Restocker;

/** What stands beside a plan: how sure it is, and what its way of serving costs. */
class RestockNotesTest {

    private static final Job.Restock JOB = (Job.Restock) RequestReader.read(Source.of(Path.of("src/test/resources/sentences/files/dear.yaml")), List.of(), Optional.empty(),
            Set.of(Kind.RESTOCK));

    private static RestockPlan plan(boolean closed) {
        RestockPlan made = Restocker.plan(JOB.catalog(), JOB.plan(), 0, Deadline.never(), line -> { });
        return new RestockPlan(made.request(), made.buys(), made.with(), made.without(), made.gain(), made.bound(), made.rounded(), made.roundedInSample(), made.hindsight(),
                made.inSample(), closed, made.builds(), made.courses(), made.late(), made.classes(), made.parts(), made.curve());
    }

    private static String notes(RestockPlan plan) {
        return String.join(" ", RestockNotes.of(new RestockView(plan, JOB.catalog(), 0, List.of())).values());
    }

    @Test
    void whatTheBoundIsOverIsSaid() {
        assertThat(notes(plan(true))).contains(" builds that the search found; at its shadow prices no other build earns more.");
        assertThat(notes(plan(false))).contains(" builds that the search found; others may add to it.");
    }
}
