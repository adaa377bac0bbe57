package sledwright.planner;

import java.util.List;
import sledwright.domain.Request;
import sledwright.generator.Doubts;
import sledwright.generator.Status;

/**
 * The answer to a request, every build of it judged valid.
 *
 * @param best     the objective's figure of the best: minor units for cheapest and best-value (price less worth), else
 *                 throughput, GB/s or usable GB of one machine; NaN when there is none
 * @param bound    nothing better than this exists, as the generator states it
 * @param ranked   the best and its alternatives in the order of the objective; empty when there is none
 * @param doubts   whether the best and the alternatives are those that the request asks for
 */
public record Outcome(Request request, Status status, double best, double bound, List<Judged> ranked, Doubts doubts) {

    public Outcome {
        ranked = List.copyOf(ranked);
    }
}
