package sledwright.planner;

import static org.optaplanner.core.api.score.stream.ConstraintCollectors.toList;
import java.util.ArrayList;
import java.util.List;
import org.optaplanner.core.api.score.stream.Constraint;
import org.optaplanner.core.api.score.stream.ConstraintFactory;
import org.optaplanner.core.api.score.stream.ConstraintProvider;
import sledwright.rules.Housing;
import sledwright.rules.Machine;
import sledwright.rules.Order;
import sledwright.rules.Rule;
import sledwright.rules.Rulebook;

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
        Rulebook.ofMachine().forEach(rule -> constraints.add(ofMachines(factory, rule)));
        Rulebook.ofEnclosure().forEach(rule -> constraints.add(ofEnclosures(factory, rule)));
        Rulebook.ofOrder().forEach(rule -> constraints.add(
                rule.isOfAllLines() ? ofAllLines(factory, rule) : ofLine(factory, rule)));
        for (Criterion criterion : Criterion.values()) {
            constraints.add(soft(factory, criterion));
        }
        return constraints.toArray(Constraint[]::new);
    }

    /** Every machine of a line keeps the rule. */
    private static Constraint ofMachines(ConstraintFactory factory, Rule<Machine> rule) {
        return factory.forEach(LinePlan.class)
                .filter(line -> !line.candidate().brokenByMachines(rule).isEmpty())
                .penalizeLong(Score.BREACH, line -> line.candidate().brokenByMachines(rule).size())
                .justifyWith((line, score) -> new RuleBroken(line.stock(), line.candidate().brokenByMachines(rule)))
                .asConstraint(RULE, rule.id());
    }

    /** Every enclosure that is bought with a line's machines keeps the rule. */
    private static Constraint ofEnclosures(ConstraintFactory factory, Rule<Housing> rule) {
        return factory.forEach(LinePlan.class)
                .filter(line -> !line.candidate().brokenByEnclosures(rule).isEmpty())
                .penalizeLong(Score.BREACH, line -> line.candidate().brokenByEnclosures(rule).size())
                .justifyWith((line, score) -> new RuleBroken(line.stock(), line.candidate().brokenByEnclosures(rule)))
                .asConstraint(RULE, rule.id());
    }

    /** Each line keeps the rule, whose figures its request states. */
    private static Constraint ofLine(ConstraintFactory factory, Rule<Order> rule) {
        return factory.forEach(LinePlan.class)
                .filter(line -> !line.candidate().brokenByOrder(rule).isEmpty())
                .penalizeLong(Score.BREACH, line -> line.candidate().brokenByOrder(rule).size())
                .justifyWith((line, score) -> new RuleBroken(line.stock(), line.candidate().brokenByOrder(rule)))
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
