package sledwright.report.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sledwright.compare.Comparer;
import sledwright.compare.Cost;
import sledwright.desk.view.CompareView;
import sledwright.desk.view.CompareView.CompareProof;
import sledwright.desk.view.CompareView.CurveView;
import sledwright.desk.view.CompareView.Scope;
import sledwright.generator.Axis;
import sledwright.generator.Doubts;
import sledwright.generator.Doubts.Cause;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.input.Source;
import sledwright.report.text.Screen;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;

/** A curve that time cut off claims no more points than were proved. */
class CompareTextTest {

    private static final Job.Quote JOB = (Job.Quote) RequestReader.read(Source.of(Path.of("src/test/resources/sentences/files/quote.yaml")), List.of(), Optional.empty(),
            Set.of(Kind.QUOTE));

    /** The whole comparison, as if only a given number of points of its curve were proved. */
    private static CompareView cut(int proved, Optional<BigDecimal> bound, Doubts doubts) {
        CompareView whole = CompareView.of(new Comparer(JOB.catalog(), new Search(JOB.catalog())).compare(JOB.request(), Optional.empty(), List.of(Cost.PRICE), List.of(Axis.CORES), false,
                Deadline.never()), JOB.catalog());
        CurveView curve = whole.curves().get(0);
        assertThat(curve.points()).hasSizeGreaterThan(2);
        return new CompareView(whole.topic(), new Scope(whole.scope().energy(), whole.scope().pricePerKwh(), false, whole.scope().discount()),
                new CompareProof(Status.BEST_FOUND, doubts),
                List.of(new CurveView(curve.axes(), Status.BEST_FOUND, proved, bound, curve.points(), curve.shortened())), whole.builds(), Optional.empty(), whole.day());
    }

    private static String text(int proved, Optional<BigDecimal> bound) {
        return CompareText.of(cut(proved, bound, Doubts.of(Cause.TIME)), Screen.PLAIN).replaceAll("\\s+", " ");
    }

    @Test
    void howManyPointsAreProvedIsSaid() {
        assertThat(text(0, Optional.empty())).contains("Cores by price: no point is proved").doesNotContain("nothing that gives more");
        assertThat(text(1, Optional.of(new BigDecimal("300.00"))))
                .contains("Cores by price: the first point is proved; nothing that gives more costs less than 300.00 EUR");
        assertThat(text(2, Optional.of(new BigDecimal("300.00"))))
                .contains("Cores by price: the first 2 points are proved; nothing that gives more costs less than 300.00 EUR");
    }

    @Test
    void moreTimeIsAdvisedWhereItHelps() {
        assertThat(text(0, Optional.empty())).contains("best-found: not every point is proved. Maybe allow more time: --time-limit");
        assertThat(CompareText.of(cut(0, Optional.empty(), Doubts.of(Cause.EFFICIENCY)), Screen.PLAIN).replaceAll("\\s+", " "))
                .contains("best-found: not every point is proved. A supply whose efficiency rises faster than its load may take less from the wall for more load, so a"
                        + " heavier build may cost less to run. More time does not help.").doesNotContain("--time-limit");
    }

    @Test
    void thePageSaysTheSame() {
        CompareView view = cut(2, Optional.of(new BigDecimal("300.00")), Doubts.of(Cause.TIME));
        assertThat(ComparePage.of(view, JOB)).contains("The first 2 of %d prices are certain; nothing that brings more costs less than \u20ac300.00."
                .formatted(view.curves().get(0).points().size()));
    }
}
