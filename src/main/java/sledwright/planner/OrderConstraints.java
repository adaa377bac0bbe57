package sledwright.planner;

import static org.optaplanner.core.api.score.stream.ConstraintCollectors.toList;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.optaplanner.core.api.score.stream.Constraint;
import org.optaplanner.core.api.score.stream.ConstraintFactory;
import org.optaplanner.core.api.score.stream.ConstraintProvider;
import sledwright.rules.Order;
import sledwright.rules.Rule;
import sledwright.rules.Rulebook;
import sledwright.rules.Violation;

/**
 * The rulebook as hard constraints under the rules' identifiers, and the criteria as soft ones under theirs. No rule is
 * stated here: each constraint asks its rule.
 */
public final class OrderConstraints implements ConstraintProvider {

    /** What OptaPlanner calls a package: some rules and criteria bear the same name. */
    private static final String RULE = "rule";
    private static final String TRADE = "trade";

    @Override
    public Constraint[] defineConstraints(ConstraintFactory factory) {
        List<Constraint> constraints = new ArrayList<>();
        Rulebook.ofMachine().forEach(rule -> constraints.add(ofLine(factory, rule, line -> line.brokenByMachines(rule))));
        Rulebook.ofEnclosure().forEach(rule -> constraints.add(ofLine(factory, rule, line -> line.brokenByEnclosures(rule))));
        Rulebook.ofOrder().forEach(rule -> constraints.add(
                rule.isOfAllLines() ? ofAllLines(factory, rule) : ofLine(factory, rule, line -> line.brokenByOrder(rule))));
        for (Criterion criterion : Criterion.values()) {
            constraints.add(soft(factory, criterion));
        }
        return constraints.toArray(Constraint[]::new);
    }

    /** Every machine of a line, every enclosure that is bought with them or the line itself keeps the rule: its request has the figures. */
    private static Constraint ofLine(ConstraintFactory factory, Rule<?> rule, Function<Candidate, List<Violation>> broken) {
        return factory.forEach(LinePlan.class)
                .filter(line -> !broken.apply(line.candidate()).isEmpty())
                .penalizeLong(Score.BREACH, line -> broken.apply(line.candidate()).size())
                .justifyWith((line, score) -> new RuleBroken(line.stock(), broken.apply(line.candidate())))
                .asConstraint(RULE, rule.id());
    }

    /** All lines that draw on one stock keep the rule together. */
    private static Constraint ofAllLines(ConstraintFactory factory, Rule<Order> rule) {
        return factory.forEach(LinePlan.class)
                .groupBy(LinePlan::stock, toList(LinePlan::candidate))
                .map((stock, candidates) -> new RuleBroken(stock, Candidate.brokenTogether(candidates, rule)))
                .filter(broken -> !broken.violations().isEmpty())
                .penalizeLong(Score.BREACH, broken -> broken.violations().size())
                .justifyWith((broken, score) -> broken)
                .asConstraint(RULE, rule.id());
    }

    private static Constraint soft(ConstraintFactory factory, Criterion criterion) {
        return factory.forEach(LinePlan.class)
                .impactLong(Score.unitOf(criterion), line -> criterion.points(line.candidate()))
                .justifyWith((line, score) -> new Weighed(line.stock(), Trades.of(criterion, line.candidate())))
                .asConstraint(TRADE, criterion.id());
    }
}
