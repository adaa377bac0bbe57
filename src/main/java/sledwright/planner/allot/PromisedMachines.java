package sledwright.planner.allot;

import java.util.ArrayList;
import java.util.List;
import org.optaplanner.core.api.domain.entity.PlanningEntity;
import org.optaplanner.core.api.domain.entity.PlanningPin;
import org.optaplanner.core.api.domain.lookup.PlanningId;
import org.optaplanner.core.api.domain.valuerange.ValueRangeProvider;
import org.optaplanner.core.api.domain.variable.PlanningVariable;

/** The machines of one promise, for which OptaPlanner chooses among the ways that the exact search found; none: the promise is broken. */
@PlanningEntity
final class PromisedMachines {

    // Annotated fields, not getters: a getter costs a generated class at start-up.
    @PlanningId
    private String name;

    private Promise promise;

    @PlanningPin
    private boolean pinned;

    @ValueRangeProvider
    private List<Filling> ways;

    @PlanningVariable
    private Filling filling;

    /** Whether nobody waits for them any more. */
    private boolean over;

    /** For OptaPlanner, which copies the fields. */
    PromisedMachines() {
    }

    PromisedMachines(Promise promise, List<Filling> known, Filling filling) {
        name = promise.name();
        this.promise = promise;
        pinned = promise.pinned();
        ways = new ArrayList<>(known);
        ways.removeIf(way -> way.isLike(filling));
        ways.add(filling);
        if (ways.stream().noneMatch(way -> way.isLike(Filling.NONE))) {
            ways.add(Filling.NONE);
        }
        this.filling = filling;
    }

    String name() {
        return name;
    }

    Promise promise() {
        return promise;
    }

    Filling filling() {
        return filling;
    }

    List<Filling> ways() {
        return ways;
    }

    void give(Filling other) {
        filling = other;
    }

    boolean isOver() {
        return over;
    }

    /** Whether it is to be decided how the promise is kept. */
    boolean isOpen() {
        return !over && !promise.pinned();
    }

    /** Its parts have been picked meanwhile, or nobody waits for them any more. */
    void settle(boolean nobodyWaits) {
        pinned = true;
        over = nobodyWaits;
    }

    /** What was picked is what was kept; where nobody waits, nothing is taken. */
    void take(boolean nobodyWaits) {
        filling = nobodyWaits ? Filling.NONE : Filling.picked(promise.kept());
    }
}
