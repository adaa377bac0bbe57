package sledwright.planner;

import java.util.List;
import org.optaplanner.core.api.domain.entity.PlanningEntity;
import org.optaplanner.core.api.domain.lookup.PlanningId;
import org.optaplanner.core.api.domain.valuerange.ValueRangeProvider;
import org.optaplanner.core.api.domain.variable.PlanningVariable;

/** A line of an order, some machines of one request, and what fills it. OptaPlanner scores and explains it; it chooses nothing. */
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

    LinePlan(String name, Candidate candidate) {
        this.name = name;
        this.candidate = candidate;
        candidates = List.of(candidate);
    }

    String name() {
        return name;
    }

    /** What fills the line. */
    Candidate candidate() {
        return candidate;
    }
}
