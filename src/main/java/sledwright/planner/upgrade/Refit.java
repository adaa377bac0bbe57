package sledwright.planner.upgrade;

import java.util.List;
import sledwright.domain.Build;

/**
 * What is done to a number of machines that are alike before and after.
 *
 * @param steps in the order of the work; none when nothing changes
 */
public record Refit(int machines, Build after, List<BenchStep> steps) {

    public Refit {
        steps = List.copyOf(steps);
    }
}
