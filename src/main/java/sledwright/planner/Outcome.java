package sledwright.planner;

import java.util.List;
import sledwright.domain.Request;
import sledwright.generator.Status;

/**
 * The answer to a request, every build of it judged valid.
 *
 * @param best   the objective's figure of the best, as the generator states it
 * @param bound  nothing better than this exists, as the generator states it
 * @param ranked the best and its alternatives in the order of the objective; empty when there is none
 */
public record Outcome(Request request, Status status, double best, double bound, List<Judged> ranked) {

    public Outcome {
        ranked = List.copyOf(ranked);
    }
}
