package sledwright.explain.conflict;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Minimal conflicts and corrections by trying every subset. */
final class BruteForce {

    private BruteForce() {
    }

    static <T> List<Set<T>> conflicts(List<T> demands, Predicate<Set<T>> possible) {
        return minimal(subsets(demands).filter(possible.negate()).toList());
    }

    static <T> List<Set<T>> corrections(List<T> demands, Predicate<Set<T>> possible) {
        return minimal(subsets(demands).filter(given -> {
            Set<T> rest = new HashSet<>(demands);
            rest.removeAll(given);
            return possible.test(rest);
        }).toList());
    }

    private static <T> Stream<Set<T>> subsets(List<T> demands) {
        return IntStream.range(0, 1 << demands.size()).mapToObj(bits -> IntStream.range(0, demands.size())
                .filter(i -> (bits >> i & 1) == 1).mapToObj(demands::get).collect(Collectors.toSet()));
    }

    private static <T> List<Set<T>> minimal(List<Set<T>> sets) {
        return sets.stream().filter(set -> sets.stream().noneMatch(other -> other.size() < set.size() && set.containsAll(other))).toList();
    }
}
