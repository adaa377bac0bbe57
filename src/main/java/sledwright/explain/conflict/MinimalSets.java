package sledwright.explain.conflict;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.Set;
import java.util.function.Predicate;
import sledwright.explain.ask.UnsettledException;
import sledwright.generator.Doubts;

/**
 * The minimal conflicts among demands, and the minimal corrections: those sets of demands that it takes to give up.
 *
 * <p>Each hits every one of the other: a smallest set that hits all conflicts known so far is given up, and either the rest can be met,
 * which makes it a minimal correction, or the rest holds a new conflict. Whatever ends this early, what was found is right.
 *
 * @param <T>         a demand
 * @param conflicts   in the order in which they were found
 * @param corrections those of few demands first
 * @param complete    whether there are no others
 */
record MinimalSets<T>(List<Set<T>> conflicts, List<Set<T>> corrections, boolean complete, Doubts doubts) {

    MinimalSets {
        conflicts = List.copyOf(conflicts);
        corrections = List.copyOf(corrections);
    }

    /**
     * Searches until nothing is left, until there are {@code enough} of both kinds, or until a question stays unsettled.
     *
     * @param demands  all of them
     * @param possible whether some of them can be met together; fewer are never harder to meet
     */
    static <T> MinimalSets<T> of(List<T> demands, Predicate<Set<T>> possible, int enough) {
        List<Set<T>> conflicts = new ArrayList<>();
        List<Set<T>> corrections = new ArrayList<>();
        QuickXplain<T> quickXplain = new QuickXplain<>(possible);
        try {
            while (conflicts.size() < enough || corrections.size() < enough) {
                Optional<Set<T>> givenUp = smallestHitting(conflicts, corrections);
                if (givenUp.isEmpty()) {
                    return new MinimalSets<>(conflicts, corrections, true, Doubts.NONE);
                }
                List<T> rest = demands.stream().filter(demand -> !givenUp.get().contains(demand)).toList();
                if (possible.test(new HashSet<>(rest))) {
                    corrections.add(givenUp.get());
                } else {
                    conflicts.add(quickXplain.conflict(rest));
                }
            }
        } catch (UnsettledException open) {
            return new MinimalSets<>(conflicts, corrections, false, open.doubts());
        }
        return new MinimalSets<>(conflicts, corrections, smallestHitting(conflicts, corrections).isEmpty(), Doubts.NONE);
    }

    /** A smallest set that shares a demand with every conflict and holds no known correction. */
    private static <T> Optional<Set<T>> smallestHitting(List<Set<T>> conflicts, List<Set<T>> corrections) {
        Queue<Set<T>> open = new ArrayDeque<>(List.of(Set.of()));
        Set<Set<T>> seen = new HashSet<>();
        while (!open.isEmpty()) {
            Set<T> chosen = open.remove();
            if (corrections.stream().anyMatch(chosen::containsAll)) {
                continue;
            }
            Optional<Set<T>> missed = conflicts.stream().filter(conflict -> Collections.disjoint(conflict, chosen)).findFirst();
            if (missed.isEmpty()) {
                return Optional.of(chosen);
            }
            for (T demand : missed.get()) {
                Set<T> larger = new LinkedHashSet<>(chosen);
                larger.add(demand);
                if (seen.add(larger)) {
                    open.add(larger);
                }
            }
        }
        return Optional.empty();
    }
}
