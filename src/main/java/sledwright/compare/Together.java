package sledwright.compare;

import java.util.List;
import sledwright.rules.Order;

/**
 * All figures at once: each build beats every cheaper one of these by a share in some figure, and none that does so is missing.
 *
 * @param share    such as 0.2: a fifth more of a figure, or a fifth less load
 * @param builds   each judged valid, the cheapest first
 * @param complete whether there are no others beyond doubt; time may end the search, and so may {@link #MOST}
 */
public record Together(double share, List<Order> builds, boolean complete) {

    /** No more are looked for. */
    public static final int MOST = 500;

    public Together {
        builds = List.copyOf(builds);
    }
}
