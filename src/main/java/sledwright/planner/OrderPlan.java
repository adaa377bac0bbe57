package sledwright.planner;

import java.util.List;
import org.optaplanner.core.api.domain.solution.PlanningEntityCollectionProperty;
import org.optaplanner.core.api.domain.solution.PlanningScore;
import org.optaplanner.core.api.domain.solution.PlanningSolution;
import org.optaplanner.core.api.score.buildin.bendablelong.BendableLongScore;

/** Lines that draw on one stock. A quote is an order of one line. */
@PlanningSolution
final class OrderPlan {

    @PlanningEntityCollectionProperty
    private List<LinePlan> lines;

    @PlanningScore(bendableHardLevelsSize = Score.HARD_LEVELS, bendableSoftLevelsSize = Score.SOFT_LEVELS)
    private BendableLongScore score;

    /** For OptaPlanner, which copies the fields. */
    OrderPlan() {
    }

    OrderPlan(List<LinePlan> lines) {
        this.lines = lines;
    }
}
