package sledwright.compare;

import java.util.List;
import sledwright.generator.Doubts;
import sledwright.rules.Order;

/**
 * All figures at once: each build beats every cheaper one of these by a share in some figure, and none that does so is missing.
 *
 * @param share    such as 0.2: a fifth more of a figure, or a fifth less load
 * @param builds   each judged valid, the cheapest first
 * @param doubts   whether there are no others, up to {@link #MOST}
 */
public record Together(double share, List<Order> builds, Doubts doubts) {

    /** No more are looked for. */
    public static final int MOST = 500;

    public Together {
        builds = List.copyOf(builds);
    }

    /** Whether it is proved that there are no others. */
    public boolean complete() {
        return doubts.none() && builds.size() < MOST;
    }
}
