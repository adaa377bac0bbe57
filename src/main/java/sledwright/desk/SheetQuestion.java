package sledwright.desk;

import java.util.List;
import java.util.OptionalInt;

/**
 * What is asked of a build, a quote or an upgrade for the sheets of the bench.
 *
 * @param sets keys to answer with in place of the request's own, as {@code path=value}
 * @param rank of a quote, the place in the list of the alternative to put together, from 1; empty: the best
 */
public record SheetQuestion(List<String> sets, OptionalInt rank) {

    public SheetQuestion {
        sets = List.copyOf(sets);
    }
}
