package sledwright.planner;

import java.util.List;
import org.optaplanner.core.api.domain.entity.PlanningEntity;
import org.optaplanner.core.api.domain.lookup.PlanningId;
import org.optaplanner.core.api.domain.valuerange.ValueRangeProvider;
import org.optaplanner.core.api.domain.variable.PlanningVariable;

/** A line of an order: so many machines of one request. The planner chooses what fills it. */
@PlanningEntity
final class LinePlan {

    // Annotated fields, not getters: a getter costs a generated class at start-up.
    @PlanningId
    private String name;

    @ValueRangeProvider
    private List<Candidate> candidates;

    @PlanningVariable
    private Candidate candidate;

    /** For OptaPlanner, which copies the fields. */
    LinePlan() {
    }

    /**
     * @param candidate where the search starts; null: unfilled
     */
    LinePlan(String name, List<Candidate> candidates, Candidate candidate) {
        this.name = name;
        this.candidates = candidates;
        this.candidate = candidate;
    }

    String name() {
        return name;
    }

    /** What fills the line; null: nothing yet. */
    Candidate candidate() {
        return candidate;
    }
}
