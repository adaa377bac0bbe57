package sledwright.planner.upgrade;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import sledwright.domain.Request;
import sledwright.generator.Doubts;
import sledwright.generator.Status;
import sledwright.rules.Violation;

/**
 * The answer to a request for an upgrade.
 *
 * @param breaches what the installed machine breaks by itself, whatever is asked for
 * @param misses   what keeps it from answering the request as it stands; empty: it answers it
 * @param plan     the least that was found; empty: nothing was
 * @param whole    the cheapest machines bought whole; empty: none was found
 */
public record Upgrade(Request request, Installed installed, List<Violation> breaches, List<Violation> misses, Proof proof,
                      Optional<Plan> plan, Optional<Whole> whole) {

    /**
     * How sure the answer is.
     *
     * @param bound       no plan costs less, minor units; empty where nothing is known
     * @param doubts      why it is not proved; none: it is
     * @param wholeDoubts why it is not proved that nothing cheaper, or nothing at all, can be bought whole
     */
    public record Proof(Status status, OptionalLong bound, Doubts doubts, Doubts wholeDoubts) {
    }

    public Upgrade {
        breaches = List.copyOf(breaches);
        misses = List.copyOf(misses);
    }

    /** Whether it costs less to buy the machines whole. */
    public boolean wholeIsCheaper() {
        return whole.isPresent() && (plan.isEmpty() || whole.get().spend() < plan.get().spend().total());
    }
}
