package sledwright.planner;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.optaplanner.core.api.score.ScoreExplanation;
import org.optaplanner.core.api.score.buildin.bendablelong.BendableLongScore;
import sledwright.rules.Order;
import sledwright.rules.Rule;
import sledwright.rules.Rulebook;
import sledwright.rules.Violation;

/** Judges finished orders: which rules they break, and what they give for their price. */
public final class Judge {

    private static final List<String> RULES = Rulebook.all().stream().<String>map(Rule::id).toList();

    /** Sets up what judges on a thread of its own, while the first builds to be judged are still looked for; who judges waits for it. */
    public static void prepare() {
        Thread beside = new Thread(Solving::prepare, "judge");
        beside.setDaemon(true);
        beside.start();
    }

    /** The judgement of an order. Broken rules are a result, not an error. */
    public Judged judge(Order order) {
        return judge(new Candidate(order)).judged();
    }

    /** Every rule that lines over one stock break, each line an order of its own request. */
    public List<Violation> judgeTogether(List<Order> lines) {
        List<LinePlan> plans = new ArrayList<>();
        for (int line = 0; line < lines.size(); line++) {
            Candidate candidate = new Candidate(lines.get(line));
            plans.add(new LinePlan("line " + (line + 1), candidate));
        }
        return plans.isEmpty() ? List.of() : broken(explain(new OrderPlan(plans)));
    }

    /** A judgement with the score by which it ranks. */
    record Verdict(Judged judged, BendableLongScore score) {
    }

    Verdict judge(Candidate candidate) {
        ScoreExplanation<OrderPlan, BendableLongScore> explained = explain(
                new OrderPlan(List.of(new LinePlan(candidate.order().request().name(), candidate))));
        List<Trade> trades = explained.getJustificationList(Trade.class).stream()
                .sorted(Comparator.comparing(Trade::criterion)).toList();
        return new Verdict(new Judged(candidate.order(), candidate.heaviest(), candidate.figures(),
                explained.getScore().toString(), broken(explained), trades), explained.getScore());
    }

    ScoreExplanation<OrderPlan, BendableLongScore> explain(OrderPlan plan) {
        return Solving.MANAGER.explain(plan);
    }

    /** Every breach, in the order of the rulebook. */
    static List<Violation> broken(ScoreExplanation<OrderPlan, BendableLongScore> explained) {
        return explained.getJustificationList(RuleBroken.class).stream().flatMap(broken -> broken.violations().stream())
                .sorted(Comparator.comparingInt(violation -> RULES.indexOf(violation.rule()))).toList();
    }
}
