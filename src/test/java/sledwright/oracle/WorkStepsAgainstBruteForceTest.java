package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import sledwright.domain.Objective;
import sledwright.domain.Request;
import sledwright.explain.Explainer;
import sledwright.explain.WorkStep;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;

/** What one step of work costs against the list of every build: none that does so much more costs less. */
class WorkStepsAgainstBruteForceTest {

    private static final int SEEDS = 150;

    private int steps;
    private int last;

    @Test
    void theNextStepOfWorkIsTheCheapestOfTheList() {
        AtomicInteger asked = new AtomicInteger();
        Disagreement.none(SEEDS, seed -> RandomCase.of(seed, RandomCase.Size.LISTABLE), that -> {
            asked.incrementAndGet();
            return judge(that);
        });
        assertThat(steps).as("steps of %s cases", asked).isGreaterThan(SEEDS / 8);
        assertThat(last).as("builds that no other outdoes").isGreaterThan(3);
    }

    private String judge(RandomCase that) {
        Search search = new Search(that.catalog());
        Findings findings = search.run(that.request(), Deadline.never());
        if (findings.status() != Status.PROVED || Agreement.isTangled(that)) {
            return "";
        }
        Candidate best = Agreement.candidate(findings.ranked().get(0));
        Optional<WorkStep> given = new Explainer(that.catalog(), search, Deadline.never()).workStep(findings);
        Request whatever = that.request().withObjective(Objective.CHEAPEST).withLimit(that.request().limit().withPrice(OptionalLong.empty()));
        Optional<Candidate> wanted = BruteForce.all(that.with(whatever)).stream()
                .filter(one -> one.work() > best.work() && one.work() >= best.work() * (1 + that.request().step()) - 0.5)
                .min(Comparator.comparingLong(Candidate::price).thenComparing(one -> -one.work()));
        steps += given.isPresent() ? 1 : 0;
        last += given.isPresent() ? 0 : 1;
        Optional<String> reached = given.map(step -> Agreement.candidate(step.order())).map(one -> one.price() + " for " + one.work());
        boolean limited = given.isPresent() && given.get().within() != that.request().limit().price().stream()
                .allMatch(most -> given.get().order().price().total() <= most);
        return reached.equals(wanted.map(one -> one.price() + " for " + one.work())) && !limited ? ""
                : "the search gives %s within %s, the list %s".formatted(reached, given.map(WorkStep::within), wanted);
    }
}
