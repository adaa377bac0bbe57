package sledwright.report.upgrade;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import sledwright.desk.view.AnswerDay;
import sledwright.desk.view.UpgradeView;
import sledwright.generator.Doubts;
import sledwright.planner.upgrade.BenchStep;
import sledwright.report.build.BenchText;
import sledwright.report.build.BuildJson;
import sledwright.report.build.DayJson;
import sledwright.report.build.ExplanationJson;
import sledwright.report.build.ViolationJson;
import sledwright.report.text.Json;
import sledwright.words.Numbers;

/** An upgrade as JSON. */
public record UpgradeJson(@JsonUnwrapped Head head, @JsonUnwrapped Spent spent, @JsonUnwrapped DayJson day,
                          @JsonUnwrapped Standing standing, @JsonUnwrapped Change change, @JsonUnwrapped Completeness completeness,
                          @JsonUnwrapped ExplanationJson explanation) {

    /** What was asked. */
    public record Head(String upgrade, String currency, String status, int machines) {
    }

    /** What the customer spends, and of what it consists; null where there is no upgrade. */
    public record Spent(BigDecimal spend, BigDecimal bound, BigDecimal parts, BigDecimal labour, BigDecimal licence, BigDecimal credit) {

        private static Spent of(UpgradeView view) {
            BigDecimal bound = view.proof().bound().orElse(null);
            return view.upgrade().map(UpgradeView.Done::spent)
                    .map(all -> new Spent(all.total(), bound, all.parts(), all.labour(), all.licence(), all.credit()))
                    .orElse(new Spent(null, bound, null, null, null, null));
        }
    }

    /** How the machines stand to what is asked. */
    public record Standing(List<ViolationJson> breaches, List<ViolationJson> misses, List<Reach> figures) {
    }

    /** One figure; null where nothing is asked, or there is no upgrade. */
    public record Reach(String figure, String unit, BigDecimal least, BigDecimal most, BigDecimal now, BigDecimal then) {

        private static Reach of(UpgradeView.Reach reach) {
            return new Reach(reach.id(), reach.unit().strip(), reach.least().map(Numbers::decimal).orElse(null),
                    reach.most().map(Numbers::decimal).orElse(null), Numbers.decimal(reach.now()),
                    reach.then().map(Numbers::decimal).orElse(null));
        }
    }

    /** What becomes of the machines, and what whole machines would cost; null where there is none. */
    public record Change(BuildJson.Dated build, List<WorkJson> work, List<String> precautions, List<String> volumes, Whole whole) {

        private static Change of(UpgradeView view) {
            Optional<UpgradeView.Done> upgrade = view.upgrade();
            return new Change(upgrade.map(done -> BuildJson.Dated.of(done.build(), view.day())).orElse(null),
                    upgrade.map(UpgradeText::opened).orElse(List.of()).stream().map(WorkJson::of).toList(),
                    upgrade.map(UpgradeText::precautions).orElse(List.of()), upgrade.map(UpgradeText::volumes).orElse(List.of()),
                    view.whole().map(whole -> Whole.of(whole, view.day())).orElse(null));
        }
    }

    /** What the bench does to machines that are alike. */
    public record WorkJson(int machines, List<Step> steps) {

        private static WorkJson of(UpgradeView.Work work) {
            return new WorkJson(work.machines(), work.steps().stream().map(Step::of).toList());
        }
    }

    /** One step; a place is null where there is none. */
    public record Step(String action, String part, String sku, String from, String to, String message) {

        private static Step of(BenchStep step) {
            return new Step(step.action().label(), step.part().label(), step.sku(), step.from().orElse(null), step.to().orElse(null),
                    BenchText.sentence(step));
        }
    }

    /** Whole machines in place of the upgrade. */
    public record Whole(BigDecimal spend, BigDecimal credit, BigDecimal extra, boolean cheaper, @JsonUnwrapped BuildJson.Dated build) {

        private static Whole of(UpgradeView.Bought whole, AnswerDay day) {
            return new Whole(whole.spend(), whole.credit(), whole.extra().orElse(null), whole.isCheaper(),
                    BuildJson.Dated.of(whole.build(), day));
        }
    }

    /** What is not proved. */
    public record Completeness(List<String> doubts, boolean wholeProved) {
    }

    public static String of(UpgradeView view) {
        return Json.of(new UpgradeJson(new Head(view.topic().request(), view.topic().currency(), view.proof().status().label(),
                view.topic().machines()), Spent.of(view),
                DayJson.of(view.day()), new Standing(ViolationJson.all(view.standing().breaches()),
                ViolationJson.all(view.standing().misses()),
                view.standing().figures().stream().map(Reach::of).toList()), Change.of(view), new Completeness(
                Doubts.ofAll(List.of(view.proof().doubts(), view.proof().wholeDoubts())).causes().stream().sorted().map(Doubts.Cause::label)
                .toList(), view.wholeProved()), ExplanationJson.of(view.explanation())));
    }
}
