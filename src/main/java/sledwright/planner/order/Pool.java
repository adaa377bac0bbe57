package sledwright.planner.order;

import java.util.OptionalInt;
import java.util.Set;
import sledwright.domain.Condition;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.rules.stock.AcceptedCondition;
import sledwright.rules.stock.LeadTime;

/** Lots that some lines accept: those that arrive in time and in a condition that suits. Lines alike in this share a pool. */
record Pool(OptionalInt leadDays, Set<Condition> conditions) {

    static Pool of(Limits limits) {
        return new Pool(limits.leadDays(), limits.conditions());
    }

    boolean accepts(Lot lot) {
        Limits limits = limits();
        return LeadTime.allows(lot, limits) && AcceptedCondition.allows(lot, limits);
    }

    /** Nothing but what makes the pool. */
    Limits limits() {
        Limits none = Limits.NONE;
        return new Limits(none.price(), none.powerW(), leadDays, none.inletC(), none.altitudeM(), none.mainsV(), conditions);
    }
}
