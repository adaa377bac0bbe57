package sledwright.explain.conflict;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sledwright.explain.ask.UnsettledException;
import sledwright.generator.Doubts;

class MinimalSetsTest {

    private static final int ALL = Integer.MAX_VALUE;

    /**
     * O'Sullivan, Papadopoulos, Faltings, Pu, "Representative explanations for over-constrained problems" (AAAI 2007): 1 allows 3000,
     * 2, 3 and 4 need 500 each, 5 needs 2600, and 2 excludes 3.
     */
    private static boolean published(Set<Integer> kept) {
        int needs = kept.stream().mapToInt(demand -> demand == 5 ? 2600 : demand == 1 ? 0 : 500).sum();
        return !(kept.contains(2) && kept.contains(3)) && (!kept.contains(1) || needs <= 3000);
    }

    @Test
    void thePublishedConflictsAndTheCorrectionsThatFollowFromThem() {
        MinimalSets<Integer> found = MinimalSets.of(List.of(1, 2, 3, 4, 5), MinimalSetsTest::published, ALL);
        assertThat(found.complete()).isTrue();
        assertThat(found.conflicts()).containsExactlyInAnyOrder(Set.of(2, 3), Set.of(1, 2, 5), Set.of(1, 3, 5), Set.of(1, 4, 5));
        // The corrections are not in the paper; they follow by arithmetic.
        assertThat(found.corrections()).containsExactlyInAnyOrder(Set.of(1, 2), Set.of(1, 3), Set.of(2, 5), Set.of(3, 5), Set.of(2, 3, 4));
        assertThat(found.corrections().get(4)).hasSize(3);
    }

    @Test
    void quickXplainFindsOneOfThePublishedConflictsFromAnyOrder() {
        List<Integer> demands = new ArrayList<>(List.of(1, 2, 3, 4, 5));
        for (int seed = 0; seed < 50; seed++) {
            java.util.Collections.shuffle(demands, new Random(seed));
            assertThat(new QuickXplain<>(MinimalSetsTest::published).conflict(demands)).as("seed " + seed)
                    .isIn(Set.of(2, 3), Set.of(1, 2, 5), Set.of(1, 3, 5), Set.of(1, 4, 5));
        }
    }

    @Test
    void whatIsPossibleNeedsNoCorrection() {
        MinimalSets<Integer> found = MinimalSets.of(List.of(1, 2), kept -> true, ALL);
        assertThat(found).isEqualTo(new MinimalSets<>(List.of(), List.of(Set.of()), true, Doubts.NONE));
    }

    @Test
    void whatIsImpossibleWithoutDemandsHasNoCorrection() {
        MinimalSets<Integer> found = MinimalSets.of(List.of(1, 2), kept -> false, ALL);
        assertThat(found).isEqualTo(new MinimalSets<>(List.of(Set.of()), List.of(), true, Doubts.NONE));
    }

    @Test
    void randomDemandsAgainstEverySubset() {
        for (int seed = 0; seed < 400; seed++) {
            Random random = new Random(seed);
            int size = 1 + random.nextInt(8);
            List<Integer> demands = IntStream.range(0, size).boxed().toList();
            List<Set<Integer>> forbidden = new ArrayList<>();
            for (int i = random.nextInt(6); i >= 0; i--) {
                Set<Integer> set = new HashSet<>();
                for (int j = random.nextInt(4); j >= 0; j--) {
                    set.add(random.nextInt(size));
                }
                forbidden.add(set);
            }
            Predicate<Set<Integer>> possible = kept -> forbidden.stream().noneMatch(kept::containsAll);
            MinimalSets<Integer> found = MinimalSets.of(demands, possible, ALL);
            assertThat(found.complete()).isTrue();
            assertThat(found.conflicts()).as("seed " + seed).containsExactlyInAnyOrderElementsOf(BruteForce.conflicts(demands, possible));
            assertThat(found.corrections()).as("seed " + seed).containsExactlyInAnyOrderElementsOf(BruteForce.corrections(demands, possible));

            MinimalSets<Integer> some = MinimalSets.of(demands, possible, 2);
            assertThat(found.conflicts()).as("seed " + seed).containsAll(some.conflicts());
            assertThat(found.corrections()).as("seed " + seed).containsAll(some.corrections());
            assertThat(some.complete()).as("seed " + seed).isEqualTo(some.conflicts().size() == found.conflicts().size()
                    && some.corrections().size() == found.corrections().size());
        }
    }

    @Test
    void whatWasFoundBeforeTimeRanOutIsRight() {
        Set<Set<Integer>> asked = new LinkedHashSet<>();
        MinimalSets<Integer> found = MinimalSets.of(List.of(1, 2, 3, 4, 5), kept -> {
            asked.add(Set.copyOf(kept));
            if (asked.size() > 12) {
                throw new UnsettledException();
            }
            return published(kept);
        }, ALL);
        assertThat(found.complete()).isFalse();
        assertThat(found.conflicts()).isNotEmpty()
                .isSubsetOf(List.of(Set.of(2, 3), Set.of(1, 2, 5), Set.of(1, 3, 5), Set.of(1, 4, 5)));
        assertThat(found.corrections()).isSubsetOf(List.of(Set.of(1, 2), Set.of(1, 3), Set.of(2, 5), Set.of(3, 5), Set.of(2, 3, 4)));
    }
}
