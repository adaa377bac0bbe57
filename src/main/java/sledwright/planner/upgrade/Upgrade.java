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
 * @param bound    no plan costs less, minor units; empty where nothing is known
 * @param plan     the least that was found; empty: nothing was
 * @param whole    the cheapest machines bought whole; empty: none was found
 * @param doubts   why it is not proved; none: it is
 * @param wholeDoubts why it is not proved that nothing cheaper, or nothing at all, can be bought whole
 */
public record Upgrade(Request request, Installed installed, List<Violation> breaches, List<Violation> misses, Status status,
                      OptionalLong bound, Optional<Plan> plan, Optional<Whole> whole, Doubts doubts, Doubts wholeDoubts) {

    public Upgrade {
        breaches = List.copyOf(breaches);
        misses = List.copyOf(misses);
    }

    /** Whether nothing cheaper, or nothing at all, can be bought whole. */
    public boolean wholeProved() {
        return wholeDoubts.none();
    }

    /** Whether it costs less to buy the machines whole. */
    public boolean wholeIsCheaper() {
        return whole.isPresent() && (plan.isEmpty() || whole.get().spend() < plan.get().spend().total());
    }
}
