package sledwright.planner;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.limit;
import static sledwright.samples.Samples.lot;
import static sledwright.samples.Samples.machine;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.domain.Lot;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.generator.Doubts;
import sledwright.generator.Findings;
import sledwright.generator.Status;
import sledwright.rules.Order;
import sledwright.rules.Violation;
import sledwright.words.Sentence;

class PlannerTest {

    private static final Request ONE = Request.named("one");
    private static final Lot CHEAP = lot("R16", "CHEAP", 12, 2_000);
    private static final Lot DEAR = lot("R16", "DEAR", 99, 2_500);

    private final Planner planner = new Planner();

    @Test
    void passesOnWhatWasFoundWithItsJudgement() {
        Order best = Shop.order(ONE, new Pick(CHEAP, 8));
        Order second = Shop.order(ONE, new Pick(DEAR, 8));

        Outcome outcome = planner.plan(new Findings(ONE, Status.BEST_FOUND, 42_000, 41_000, List.of(best, second), Doubts.of(Doubts.Cause.TIME)));

        assertThat(outcome.status()).isEqualTo(Status.BEST_FOUND);
        assertThat(outcome.best()).isEqualTo(42_000);
        assertThat(outcome.bound()).isEqualTo(41_000);
        assertThat(outcome.ranked()).extracting(Judged::order).containsExactly(best, second);
        assertThat(outcome.ranked()).allMatch(Judged::valid);
    }

    @Test
    void nothingFoundIsNothingPlanned() {
        Outcome outcome = planner.plan(new Findings(ONE, Status.IMPOSSIBLE, Double.NaN, Double.NaN, List.of(), Doubts.NONE));

        assertThat(outcome.ranked()).isEmpty();
        assertThat(outcome.status()).isEqualTo(Status.IMPOSSIBLE);
    }

    @Test
    void theSameIsJudgedAlike() {
        List<Order> orders = IntStream.range(0, 6).mapToObj(i -> Shop.order(ONE, new Pick(lot("R16", "L" + i, 8, 2_000 + i), 8))).toList();
        Findings findings = found(orders.toArray(Order[]::new));

        assertThat(new Planner().plan(findings)).isEqualTo(planner.plan(findings)).isEqualTo(planner.plan(findings));
    }

    @Test
    void ordersOfThousandsArePlanned() {
        Request many = ONE.withMachines(3_000);
        Order order = Shop.order(many, new Pick(lot("R16", "HALL", 24_000, 2_000), 24_000));

        Judged judged = planner.plan(found(order)).ranked().get(0);

        assertThat(judged.valid()).isTrue();
        assertThat(judged.trades()).extracting(trade -> trade.sentence().toString()).contains("The 3000 machines cost 1260000.00 EUR, 1.05 EUR for each unit of throughput.");
    }

    @Test
    void buildThatBreaksARuleIsADefect() {
        Build lopsided = machine(Shop.BOX).channels(4, R16).without("2A1").build();
        Order order = Shop.order(ONE.withLimit(limit().price(1).make()), lopsided, new Pick(CHEAP, 7));

        assertThatThrownBy(() -> planner.plan(found(order))).isInstanceOf(DefectException.class)
                .hasMessageContaining("matched-sockets 2A1: Slot 2A1 holds nothing")
                .hasMessageContaining("budget : The price is 400.00 EUR; the request allows 0.01 EUR.")
                .hasMessageContaining("BOX=1").hasMessageContaining("CHEAP");
    }

    @Test
    void laterAlternativeThatBreaksARuleIsADefect() {
        Order broken = Shop.order(ONE, new Pick(DEAR, 7));

        assertThatThrownBy(() -> planner.plan(found(Shop.order(ONE, new Pick(CHEAP, 8)), broken)))
                .isInstanceOf(DefectException.class).hasMessageContaining("in-stock R16");
    }

    @Test
    void alternativeBetterThanTheBestIsADefect() {
        assertThatThrownBy(() -> planner.plan(found(Shop.order(ONE, new Pick(DEAR, 8)), Shop.order(ONE, new Pick(CHEAP, 8)))))
                .isInstanceOf(DefectException.class).hasMessageContaining("Rank 2 is better than rank 1")
                .hasMessageContaining("-46000").hasMessageContaining("-42000");
    }

    @Test
    void figureThatTheBestDoesNotHaveIsADefect() {
        Order best = Shop.order(ONE, new Pick(CHEAP, 8));

        assertThatThrownBy(() -> planner.plan(new Findings(ONE, Status.PROVED, 41_999, 41_999, List.of(best), Doubts.NONE)))
                .isInstanceOf(DefectException.class).hasMessageContaining("stated as 41999.0 and judged as 42000.0");
    }

    @Test
    void whatAStoppedSearchFoundIsSorted() {
        Order cheap = Shop.order(ONE, new Pick(CHEAP, 8));
        Order dear = Shop.order(ONE, new Pick(DEAR, 8));

        Outcome outcome = planner.plan(new Findings(ONE, Status.BEST_FOUND, 46_000, 41_000, List.of(dear, cheap), Doubts.of(Doubts.Cause.TIME)));

        assertThat(outcome.ranked()).extracting(Judged::order).containsExactly(cheap, dear);
        assertThat(outcome.best()).isEqualTo(42_000);
        assertThatThrownBy(() -> planner.plan(new Findings(ONE, Status.PROVED, 46_000, 46_000, List.of(dear, cheap), Doubts.of(Doubts.Cause.TIME))))
                .isInstanceOf(DefectException.class).hasMessageContaining("The best is stated as");
    }

    @Test
    void stockIsSharedByAllLines() {
        Judge judge = new Judge();
        Candidate cheap = new Candidate(Shop.order(ONE, new Pick(CHEAP, 8)));
        Candidate dear = new Candidate(Shop.order(ONE, new Pick(DEAR, 8)));

        assertThat(broken(judge, line("one", cheap))).isEmpty();
        assertThat(broken(judge, line("one", cheap), line("other", dear))).isEmpty();
        assertThat(broken(judge, line("one", cheap), line("other", cheap))).containsExactly(
                new Violation("in-stock", "R16", Sentence.plain("Lot CHEAP of R16 gives 16 units; it sells 1 to 12.")));
    }

    @Test
    void eachLineKeepsItsOwnBudget() {
        Request poor = ONE.withLimit(limit().price(41_999).make());
        Candidate within = new Candidate(Shop.order(ONE, new Pick(DEAR, 8)));
        Candidate beyond = new Candidate(Shop.order(poor, new Pick(CHEAP, 8)));

        assertThat(broken(new Judge(), line("one", within), line("other", beyond))).extracting(Violation::rule).containsExactly("budget");
    }

    private static List<Violation> broken(Judge judge, LinePlan... lines) {
        return Judge.broken(judge.explain(new OrderPlan(Arrays.asList(lines))));
    }

    private static LinePlan line(String name, Candidate candidate) {
        return new LinePlan(name, candidate);
    }

    private static Findings found(Order... ranked) {
        long best = ranked[0].price().total();
        return new Findings(ranked[0].request(), Status.PROVED, best, best, List.of(ranked), Doubts.NONE);
    }
}
