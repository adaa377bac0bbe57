package sledwright.domain;

import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What a shop holds itself to where a request says nothing else.
 *
 * @param memory         how memory is populated
 * @param staleAfterDays days after which prices are stale; empty: never
 * @param marginFloor    least share of the net price that is to be left of it, over parts whose cost is known; empty: none
 */
public record House(MemoryWish memory, OptionalInt staleAfterDays, OptionalDouble marginFloor) {

    /** A shop that sells whatever its boards take, at any margin and however old its prices are. */
    public static final House OPEN = new House(MemoryWish.NONE);

    /** A shop that says nothing but how memory is populated. */
    public House(MemoryWish memory) {
        this(memory, OptionalInt.empty(), OptionalDouble.empty());
    }
}
