package sledwright.planner;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sledwright.domain.Objective;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.input.Source;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;
import sledwright.samples.CatalogGenerator;
import sledwright.samples.RequestGenerator;

/** What the search finds passes the planner: every build valid, the ranks in the order of the score. */
class PlannedSearchTest {

    private final Planner planner = new Planner(0);

    @TempDir
    private Path dir;

    @ParameterizedTest
    @EnumSource
    void passesAsFound(Objective objective) throws IOException {
        Path catalog = Files.createDirectories(dir.resolve("catalogue"));
        CatalogGenerator.write(1, 1, catalog);
        RequestGenerator requests = new RequestGenerator("catalogue", catalog);
        int several = 0;
        for (long seed = 0; seed < 40; seed++) {
            Path file = Files.writeString(dir.resolve("request.yaml"), requests.request(seed, objective.label()));
            Job.Quote job = (Job.Quote) RequestReader.read(Source.of(file), List.of(), Optional.empty(), Set.of(Kind.QUOTE));
            Findings findings = new Search(job.catalog()).run(job.request(), Deadline.never());

            assertThatCode(() -> planner.plan(findings)).as("%s, seed %d", objective, seed).doesNotThrowAnyException();
            Outcome outcome = planner.plan(findings);
            assertThat(outcome.ranked()).as("%s, seed %d", objective, seed).extracting(Judged::order)
                    .containsExactlyElementsOf(findings.ranked());
            assertThat(outcome.best()).as("%s, seed %d", objective, seed).isEqualTo(Double.valueOf(findings.best()));
            several += outcome.ranked().size() > 1 ? 1 : 0;
        }
        assertThat(several).as("requests of several alternatives").isGreaterThan(5);
    }

    @Test
    void aSearchWithoutTimePasses() {
        Job.Quote job = (Job.Quote) RequestReader.read(Source.of(Path.of("scenarios/render-node.yaml")), List.of(), Optional.empty(), Set.of(Kind.QUOTE));
        Findings findings = new Search(job.catalog()).run(job.request(), Deadline.in(Duration.ZERO));

        Outcome outcome = planner.plan(findings);

        assertThat(outcome.status()).isEqualTo(Status.BEST_FOUND);
        assertThat(outcome.ranked()).hasSameSizeAs(findings.ranked()).allMatch(Judged::valid);
    }
}
