package sledwright.generator;

import java.util.List;
import sledwright.domain.Request;
import sledwright.rules.Order;

/**
 * What a search found.
 *
 * @param ranked   the best order and its alternatives in the order of the objective; empty when there is none
 * @param best     the objective's figure of the best: minor units for cheapest and best-value (price less worth), else
 *                 throughput, GB/s or usable GB of one machine; NaN when there is none
 * @param bound    nothing better than this exists; equals {@code best} when proved; NaN when impossible
 * @param doubts   whether the best and the alternatives are those of the walk; a deadline may end it after the best is proved
 */
public record Findings(Request request, Status status, double best, double bound, List<Order> ranked, Doubts doubts) {

    public Findings {
        ranked = List.copyOf(ranked);
    }

    /** Whether it is proved that the alternatives are those of the walk. */
    public boolean complete() {
        return doubts.none();
    }
}
