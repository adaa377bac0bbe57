package sledwright.planner;

import java.util.List;
import org.optaplanner.core.api.domain.entity.PlanningEntity;
import org.optaplanner.core.api.domain.lookup.PlanningId;
import org.optaplanner.core.api.domain.valuerange.ValueRangeProvider;
import org.optaplanner.core.api.domain.variable.PlanningVariable;

/**
 * A line of an order, some machines of one request, and what fills it. OptaPlanner scores and explains it; it chooses nothing. Lines that
 * are alternatives to each other are judged in one plan, each with a stock of its own.
 */
@PlanningEntity
final class LinePlan {

    // Annotated fields, not getters: a getter costs a generated class at start-up.
    @PlanningId
    private String name;

    private String stock;

    @ValueRangeProvider
    private List<Candidate> candidates;

    @PlanningVariable
    private Candidate candidate;

    /** For OptaPlanner, which copies the fields. */
    LinePlan() {
    }

    /** A line that draws on the stock that all lines of an order share. */
    LinePlan(String name, Candidate candidate) {
        this(name, "", candidate);
    }

    /** @param stock what is drawn on by all lines that name it */
    LinePlan(String name, String stock, Candidate candidate) {
        this.name = name;
        this.stock = stock;
        this.candidate = candidate;
        candidates = List.of(candidate);
    }

    String stock() {
        return stock;
    }

    /** What fills the line. */
    Candidate candidate() {
        return candidate;
    }
}
