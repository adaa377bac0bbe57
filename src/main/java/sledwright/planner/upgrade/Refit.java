package sledwright.planner.upgrade;

import java.util.List;
import sledwright.domain.Build;

/**
 * What is done to so many machines that are alike before and after.
 *
 * @param steps in the order in which hands work; none when nothing changes
 */
public record Refit(int machines, Build after, List<BenchStep> steps) {

    public Refit {
        steps = List.copyOf(steps);
    }
}
