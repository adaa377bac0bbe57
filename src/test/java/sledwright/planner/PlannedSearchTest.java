package sledwright.planner;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sledwright.domain.Objective;
import sledwright.domain.Request;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.input.Source;
import sledwright.metrics.Figures;
import sledwright.metrics.SurplusWorth;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;
import sledwright.rules.Order;
import sledwright.samples.CatalogGenerator;
import sledwright.samples.RequestGenerator;

/** What the search finds passes the planner: every build valid, the ranks in the order of the score. */
class PlannedSearchTest {

    private final Planner planner = new Planner();

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
            Job.Quote job = (Job.Quote) RequestReader.read(Source.of(file), objective == Objective.LEAST_TOTAL
                    ? List.of("energy.years=4", "energy.price_per_kwh=0.3", "energy.duty=0.5") : List.of(), Optional.empty(), Set.of(Kind.QUOTE));
            Search search = new Search(job.catalog());
            Findings findings = search.run(job.request(), Deadline.never());

            assertThatCode(() -> planner.plan(findings)).as("%s, seed %d", objective, seed).doesNotThrowAnyException();
            Outcome outcome = planner.plan(findings);
            assertThat(outcome.ranked()).as("%s, seed %d", objective, seed).extracting(Judged::order)
                    .containsExactlyElementsOf(findings.ranked());
            assertThat(outcome.best()).as("%s, seed %d", objective, seed).isEqualTo(Double.valueOf(findings.best()));
            several += outcome.ranked().size() > 1 ? 1 : 0;
            for (Judged judged : outcome.ranked()) {
                atItsOwnPrice(search, job.request(), judged.order().price().total(), findings, "%s, seed %d".formatted(objective, seed));
            }
        }
        assertThat(several).as("requests of several alternatives").isGreaterThan(5);
    }

    /** Where no more may be spent than some build costs, the best is no worse than that build, and no better than without the limit. */
    private void atItsOwnPrice(Search search, Request request, long price, Findings unlimited, String where) {
        Findings findings = search.run(request.withLimit(request.limit().withPrice(OptionalLong.of(price))), Deadline.never());
        assertThat(findings.status()).as(where).isEqualTo(Status.PROVED);
        assertThat(planner.plan(findings).ranked()).as(where).isNotEmpty();
        boolean lessIsBetter = request.objective().isMoney();
        assertThat(lessIsBetter ? findings.best() >= unlimited.best() : findings.best() <= unlimited.best()).as(where).isTrue();
        double reached = unlimited.ranked().stream().filter(order -> order.price().total() == price).mapToDouble(order -> aim(order, request))
                .reduce(lessIsBetter ? Math::min : Math::max).orElseThrow();
        assertThat(lessIsBetter ? findings.best() <= reached + 1e-6 : findings.best() >= reached - 1e-6).as(where).isTrue();
    }

    private static double aim(Order order, Request request) {
        Figures worst = Figures.ofEach(order.machines().stream().map(build -> Figures.of(build, request, order.catalog().throughputFactors())).toList());
        return switch (request.objective()) {
            case CHEAPEST -> order.price().total();
            case MOST_THROUGHPUT -> worst.throughput();
            case MOST_BANDWIDTH -> worst.bandwidthGbs();
            case MOST_MEMORY -> worst.usableGb();
            case MOST_WORK -> worst.work();
            case MOST_CORES -> worst.cores();
            case LEAST_TOTAL -> order.total();
            case BEST_VALUE -> order.price().total()
                    - SurplusWorth.of(request, worst);
        };
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
