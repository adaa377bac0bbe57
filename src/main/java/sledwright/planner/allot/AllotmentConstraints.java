package sledwright.planner.allot;

import static org.optaplanner.core.api.score.stream.ConstraintCollectors.sum;
import static org.optaplanner.core.api.score.stream.Joiners.equal;

import java.util.List;
import org.optaplanner.core.api.score.buildin.bendablelong.BendableLongScore;
import org.optaplanner.core.api.score.stream.Constraint;
import org.optaplanner.core.api.score.stream.ConstraintFactory;
import org.optaplanner.core.api.score.stream.ConstraintJustification;
import org.optaplanner.core.api.score.stream.ConstraintProvider;
import sledwright.rules.stock.InStock;

/** What holds over all promises together: the rulebook, then kept promises, few changes and little cost. No rule is stated here. */
public final class AllotmentConstraints implements ConstraintProvider {

    private static final String RULE = "rule";
    private static final String AIM = "aim";

    /** Why a constraint counts: a promise and what is to be said of it. */
    record Why(String promise, Matter matter, long amount) implements ConstraintJustification {
    }

    /** What a constraint is about. */
    enum Matter {
        RULES, BROKEN, CHANGED, COST, MOVED
    }

    /** A lot of which more is taken than there is. */
    record Overdrawn(LotName lot, int taken, int available) implements ConstraintJustification {
    }

    @Override
    public Constraint[] defineConstraints(ConstraintFactory factory) {
        return List.of(
                factory.forEach(PromisedMachines.class)
                        .filter(one -> !one.isOver() && !one.filling().broken().isEmpty())
                        .penalizeLong(hard(), one -> one.filling().broken().size())
                        .justifyWith((one, score) -> new Why(one.name(), Matter.RULES, one.filling().broken().size()))
                        .asConstraint(RULE, "rulebook"),
                factory.forEach(PromisedMachines.class)
                        .flattenLast(one -> one.filling().takes())
                        .groupBy(Filling.Take::lot, sum(Filling.Take::units))
                        .join(AllottedLot.class, equal((lot, units) -> lot, AllottedLot::name))
                        .filter((name, units, lot) -> !InStock.allows(lot.lot(), units))
                        .penalizeLong(hard(), (name, units, lot) -> Math.max(1, units - lot.lot().available()))
                        .justifyWith((name, units, lot, score) -> new Overdrawn(name, units, lot.lot().available()))
                        .asConstraint(RULE, InStock.ID),
                factory.forEach(PromisedMachines.class)
                        .filter(one -> one.isOpen() && one.filling().order().isEmpty())
                        .penalizeLong(soft(0), one -> one.promise().machines())
                        .justifyWith((one, score) -> new Why(one.name(), Matter.BROKEN, one.promise().machines()))
                        .asConstraint(AIM, "promises-kept"),
                factory.forEach(PromisedMachines.class)
                        .filter(one -> one.isOpen() && one.filling().changes(one.promise()))
                        .penalizeLong(soft(1), one -> one.promise().machines())
                        .justifyWith((one, score) -> new Why(one.name(), Matter.CHANGED, one.promise().machines()))
                        .asConstraint(AIM, "few-changes"),
                factory.forEach(PromisedMachines.class)
                        .filter(PromisedMachines::isOpen)
                        .penalizeLong(soft(2), one -> one.filling().cost())
                        .justifyWith((one, score) -> new Why(one.name(), Matter.COST, one.filling().cost()))
                        .asConstraint(AIM, "cost"),
                factory.forEach(PromisedMachines.class)
                        .filter(one -> one.isOpen() && one.filling().moved(one.promise()) > 0)
                        .penalizeLong(soft(3), one -> one.filling().moved(one.promise()))
                        .justifyWith((one, score) -> new Why(one.name(), Matter.MOVED, one.filling().moved(one.promise())))
                        .asConstraint(AIM, "same-lots")).toArray(Constraint[]::new);
    }

    private static BendableLongScore hard() {
        return BendableLongScore.ofHard(AllotmentPlan.HARD_LEVELS, AllotmentPlan.SOFT_LEVELS, 0, 1);
    }

    private static BendableLongScore soft(int level) {
        return BendableLongScore.ofSoft(AllotmentPlan.HARD_LEVELS, AllotmentPlan.SOFT_LEVELS, level, 1);
    }
}
