package sledwright.planner.allot;

import java.util.List;
import org.optaplanner.core.api.domain.solution.PlanningEntityCollectionProperty;
import org.optaplanner.core.api.domain.solution.PlanningScore;
import org.optaplanner.core.api.domain.solution.PlanningSolution;
import org.optaplanner.core.api.domain.solution.ProblemFactCollectionProperty;
import org.optaplanner.core.api.score.buildin.bendablelong.BendableLongScore;

/** Every promise with the stock that they share. */
@PlanningSolution
final class AllotmentPlan {

    /** Breaches of rules. */
    static final int HARD_LEVELS = 1;

    /** Broken promises, changed machines, cost, units from elsewhere: each level decides only where those before it are equal. */
    static final int SOFT_LEVELS = 4;

    @PlanningEntityCollectionProperty
    private List<PromisedMachines> promises;

    @ProblemFactCollectionProperty
    private List<AllottedLot> lots;

    @PlanningScore(bendableHardLevelsSize = HARD_LEVELS, bendableSoftLevelsSize = SOFT_LEVELS)
    private BendableLongScore score;

    /** For OptaPlanner, which copies the fields. */
    AllotmentPlan() {
    }

    AllotmentPlan(List<PromisedMachines> promises, List<AllottedLot> lots) {
        this.promises = promises;
        this.lots = lots;
    }

    List<PromisedMachines> promises() {
        return promises;
    }

    List<AllottedLot> lots() {
        return lots;
    }

    /** Other stock; the old list belongs to the best plan so far. */
    void setLots(List<AllottedLot> other) {
        lots = other;
    }
}
