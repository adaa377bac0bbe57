package sledwright.planner.allot;

import org.optaplanner.core.api.domain.lookup.PlanningId;
import sledwright.domain.Lot;

/** What promises may take of a lot. */
final class AllottedLot {

    /** By which OptaPlanner finds it again in a copy of the plan. */
    @PlanningId
    private final String id;

    private final LotName name;
    private final Lot lot;

    AllottedLot(LotName name, Lot lot) {
        id = name.toString();
        this.name = name;
        this.lot = lot;
    }

    LotName name() {
        return name;
    }

    Lot lot() {
        return lot;
    }

    /** The same lot with other units. */
    AllottedLot with(int units) {
        return new AllottedLot(name, lot.with(Math.max(0, units), lot.breaks()));
    }
}
