package sledwright.domain;

import java.util.List;
import java.util.Set;

/**
 * A row of a platform's speed table.
 *
 * @param ranks physical ranks that the row serves; empty: every count
 * @param mts   MT/s with 1, 2 ... modules on the channel; more modules than it lists are not supported
 */
public record SpeedEntry(ModuleType type, Set<Integer> ranks, List<Integer> mts) {

    public SpeedEntry {
        ranks = Set.copyOf(ranks);
        mts = List.copyOf(mts);
    }
}
