package sledwright.planner;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.optaplanner.core.api.score.ScoreExplanation;
import org.optaplanner.core.api.score.buildin.bendablelong.BendableLongScore;
import org.optaplanner.core.api.score.constraint.ConstraintMatch;
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
        return judgeEach(List.of(order)).get(0).judged();
    }

    /** Every rule that lines over one stock break, each line an order of its own request. */
    public List<Violation> judgeTogether(List<Order> lines) {
        List<LinePlan> plans = IntStream.rangeClosed(1, lines.size())
                .mapToObj(line -> new LinePlan("line " + line, new Candidate(lines.get(line - 1)))).toList();
        return plans.isEmpty() ? List.of() : broken(explain(new OrderPlan(plans)));
    }

    /** A judgement with the score by which it ranks. */
    record Verdict(Judged judged, BendableLongScore score) {
    }

    /** Each of some orders by itself, as if there were no other; they are judged in one plan, since setting one up takes longest. */
    List<Verdict> judgeEach(List<Order> orders) {
        List<LinePlan> plans = IntStream.rangeClosed(1, orders.size()).mapToObj(place ->
                new LinePlan("alternative " + place, "stock " + place, new Candidate(orders.get(place - 1)))).toList();
        Map<String, List<ConstraintMatch<BendableLongScore>>> found = plans.isEmpty() ? Map.of()
                : explain(new OrderPlan(plans)).getConstraintMatchTotalMap().values().stream()
                .flatMap(total -> total.getConstraintMatchSet().stream())
                .collect(Collectors.groupingBy(match -> ((Judgement) match.getJustification()).stock()));
        return plans.stream().map(plan -> verdict(plan.candidate(), found.get(plan.stock()))).toList();
    }

    private static Verdict verdict(Candidate candidate, List<ConstraintMatch<BendableLongScore>> found) {
        BendableLongScore score = found.stream().map(ConstraintMatch::getScore).reduce(BendableLongScore::add).orElseThrow();
        List<Trade> trades = found.stream().map(ConstraintMatch::getJustification).filter(Weighed.class::isInstance)
                .map(weighed -> ((Weighed) weighed).trade()).sorted(Comparator.comparing(Trade::criterion)).toList();
        List<Violation> broken = inOrder(found.stream().map(ConstraintMatch::getJustification).filter(RuleBroken.class::isInstance)
                .map(RuleBroken.class::cast));
        return new Verdict(new Judged(candidate.order(), candidate.heaviest(), candidate.figures(), score.toString(), broken, trades),
                score);
    }

    ScoreExplanation<OrderPlan, BendableLongScore> explain(OrderPlan plan) {
        return Solving.MANAGER.explain(plan);
    }

    /** Every breach, in the order of the rulebook. */
    static List<Violation> broken(ScoreExplanation<OrderPlan, BendableLongScore> explained) {
        return inOrder(explained.getJustificationList(RuleBroken.class).stream());
    }

    private static List<Violation> inOrder(Stream<RuleBroken> breaches) {
        return breaches.flatMap(broken -> broken.violations().stream())
                .sorted(Comparator.comparingInt(violation -> RULES.indexOf(violation.rule()))).toList();
    }
}
