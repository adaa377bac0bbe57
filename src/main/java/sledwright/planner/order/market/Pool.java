package sledwright.planner.order.market;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import sledwright.domain.Condition;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.rules.Rulebook;

/** Lots that some lines accept: those that arrive in time and in a condition that suits. Lines alike in this share a pool. */
public record Pool(OptionalInt leadDays, Set<Condition> conditions) {

    public static Pool of(Limits limits) {
        return new Pool(limits.mostDays(), limits.conditions());
    }

    /** Lots that both accept; empty where there can be none. */
    Optional<Pool> and(Pool other) {
        Set<Condition> both = new TreeSet<>(conditions.isEmpty() ? other.conditions : conditions);
        if (!other.conditions.isEmpty()) {
            both.retainAll(other.conditions);
        }
        OptionalInt sooner = IntStream.concat(leadDays.stream(), other.leadDays.stream()).min();
        boolean none = both.isEmpty() && !(conditions.isEmpty() && other.conditions.isEmpty());
        return none ? Optional.empty() : Optional.of(new Pool(sooner, both));
    }

    public boolean accepts(Lot lot) {
        return Rulebook.accepts(lot, limits());
    }

    /** Nothing but what makes the pool. */
    Limits limits() {
        return Limits.NONE.withLeadDays(leadDays).withConditions(conditions);
    }
}
