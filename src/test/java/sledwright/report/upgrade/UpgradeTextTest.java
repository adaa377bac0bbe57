package sledwright.report.upgrade;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import sledwright.desk.view.Topic;
import sledwright.desk.view.UpgradeView;
import sledwright.domain.Build;
import sledwright.domain.Request;
import sledwright.explain.Explanation;
import sledwright.generator.Doubts;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.planner.upgrade.BenchStep;
import sledwright.planner.upgrade.Installed;
import sledwright.planner.upgrade.Upgrade;
import sledwright.planner.upgrade.Upgrader;
import sledwright.planner.upgrade.Whole;
import sledwright.report.text.Screen;
import sledwright.samples.Answers;
import sledwright.samples.Samples;

/** An answer that time cut off claims no more than it knows. */
class UpgradeTextTest {

    private static Upgrade proved() {
        Build before = Samples.machine(Answers.BOX).processors(1, Answers.COOL).cooling(Samples.LOW).channels(4, Answers.R16).build();
        Request request = Answers.ASKED.withRequire(Samples.require().cores(20).memoryGb(192).make()).withLimit(Samples.limit().make());
        Installed installed = Installed.of(before, 1, 0.5, request.limit(), Answers.SHOP);
        Upgrader upgrader = new Upgrader(Answers.SHOP, request, installed);
        return upgrader.answer(upgrader.findings(Deadline.never()), Deadline.never());
    }

    private static String text(Upgrade upgrade) {
        return UpgradeText.of(UpgradeView.of(upgrade, Answers.SHOP, Explanation.NONE), Screen.PLAIN).replaceAll("\\s+", " ");
    }

    @Test
    void whatIsNotProvedIsSaidToBeSo() {
        Upgrade proved = proved();
        Whole whole = proved.whole().orElseThrow();
        long spend = proved.plan().orElseThrow().spend().total();
        Doubts late = Doubts.of(Doubts.Cause.TIME);
        Upgrade cut = new Upgrade(proved.request(), proved.installed(), proved.breaches(), proved.misses(),
                new Upgrade.Proof(Status.BEST_FOUND, OptionalLong.of(1234), late, late),
                proved.plan(), Optional.of(new Whole(whole.order(), whole.order().price().total() - spend)));
        assertThat(text(cut)).contains("best found in time: nothing costs less than 12.34 EUR", ", as much as the upgrade; time ran out before it was proved that nothing is cheaper");
        Doubts large = Doubts.of(Doubts.Cause.SIZE);
        Upgrade open = new Upgrade(cut.request(), cut.installed(), cut.breaches(), cut.misses(),
                new Upgrade.Proof(Status.BEST_FOUND, OptionalLong.of(1234), large, large), cut.plan(), cut.whole());
        assertThat(text(open)).contains("best found: nothing costs less than 12.34 EUR", ", as much as the upgrade; not proved that nothing is cheaper")
                .doesNotContain("time");
        assertThat(text(proved)).contains("proved: the target cannot be reached for less").doesNotContain("best found", "time ran out");
    }

    @Test
    void whereNothingIsBoughtTheCreditStandsAlone() {
        UpgradeView one = UpgradeView.of(proved(), Answers.SHOP, Explanation.NONE);
        UpgradeView.Done done = one.upgrade().orElseThrow();
        BigDecimal none = BigDecimal.ZERO;
        UpgradeView.Done pulled = new UpgradeView.Done(true, new UpgradeView.Spent(new BigDecimal("-4.00"), none, none, none, new BigDecimal("4.00")), done.build(), done.work());
        UpgradeView credited = new UpgradeView(new Topic(one.topic().request(), 1, one.topic().currency()), one.proof(), one.standing(),
                Optional.of(pulled), one.whole(), one.explanation(), one.day());
        assertThat(UpgradeText.of(credited, Screen.PLAIN)).contains("to spend: -4.00 EUR (less 4.00 for what is pulled)");
        assertThat(UpgradeText.of(one, Screen.PLAIN)).containsPattern("to spend: [0-9.]+ EUR \\(parts [0-9.]+ \\+ labour [0-9.]+");
    }

    /** Machines whose modules differ in part number are not worked on alike. */
    @Test
    void workIsForSomeOfTheMachines() {
        UpgradeView one = UpgradeView.of(proved(), Answers.SHOP, Explanation.NONE);
        UpgradeView.Done done = one.upgrade().orElseThrow();
        List<BenchStep> steps = done.work().get(0).steps();
        UpgradeView.Done shared = new UpgradeView.Done(true, done.spent(), done.build(),
                List.of(new UpgradeView.Work(2, steps, false), new UpgradeView.Work(1, steps, false)));
        UpgradeView three = new UpgradeView(new Topic(one.topic().request(), 3, one.topic().currency()), one.proof(), one.standing(),
                Optional.of(shared), one.whole(), one.explanation(), one.day());
        assertThat(UpgradeText.of(three, Screen.PLAIN)).contains("At the bench, each of 2 machines", "At the bench, each of 1 machine\n");
        assertThat(UpgradeText.of(one, Screen.PLAIN)).contains("At the bench\n");
    }
}
