package sledwright.planner.upgrade;

import java.util.List;
import sledwright.domain.Build;

/**
 * What is done to a number of machines that are alike before and after.
 *
 * @param steps in the order of the work; none when no part moves
 * @param remade whether volumes are of another level or other hot spares than before, which empties their drives
 */
public record Refit(int machines, Build after, List<BenchStep> steps, boolean remade) {

    public Refit {
        steps = List.copyOf(steps);
    }

    public boolean changesAnything() {
        return remade || !steps.isEmpty();
    }
}
