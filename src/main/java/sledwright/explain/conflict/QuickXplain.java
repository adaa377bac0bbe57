package sledwright.explain.conflict;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Finds a minimal conflict by dividing and conquering: Junker, "QuickXplain: preferred explanations and relaxations for
 * over-constrained problems" (AAAI 2004).
 *
 * @param <T> a demand
 * @param possible whether demands can be met together; fewer demands are never harder to meet
 */
record QuickXplain<T>(Predicate<Set<T>> possible) {

    /**
     * Demands that cannot be met together although any all but one of them can. Of several such sets, one that leans on the earlier
     * demands.
     *
     * @param demands cannot be met together
     * @return empty where nothing can be met even without demands
     */
    Set<T> conflict(List<T> demands) {
        return possible.test(Set.of()) ? conflict(List.of(), false, demands) : Set.of();
    }

    /**
     * @param grown whether the background has grown since it was last known to be possible
     */
    private Set<T> conflict(List<T> background, boolean grown, List<T> demands) {
        if (grown && !possible.test(new HashSet<>(background))) {
            return Set.of();
        }
        if (demands.size() == 1) {
            return Set.of(demands.get(0));
        }
        List<T> first = demands.subList(0, demands.size() / 2);
        List<T> second = demands.subList(first.size(), demands.size());
        Set<T> ofSecond = conflict(joined(background, first), true, second);
        Set<T> ofFirst = conflict(joined(background, List.copyOf(ofSecond)), !ofSecond.isEmpty(), first);
        Set<T> both = new LinkedHashSet<>(ofFirst);
        both.addAll(ofSecond);
        return both;
    }

    private static <T> List<T> joined(List<T> some, List<T> more) {
        List<T> all = new ArrayList<>(some);
        all.addAll(more);
        return all;
    }
}
