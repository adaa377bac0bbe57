package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The search against the list of every build: the best, its figures, and every alternative in order. More seeds by
 * {@code -Dsledwright.seeds=5000}, other ones by {@code -Dsledwright.seed=100001}.
 */
class GeneratorAgainstBruteForceTest {

    @Test
    void searchFindsWhatTheListOfEveryBuildHolds() {
        Seeds.atLeast(400).forEach(seed -> {
            RandomCase that = RandomCase.of(seed, RandomCase.Size.LISTABLE);
            if (!Agreement.withEveryBuild(that).isEmpty()) {
                RandomCase small = Shrinker.shrink(that, next -> !Agreement.withEveryBuild(next).isEmpty());
                fail("seed %d, made smaller:%n%s%n%s", seed, Agreement.withEveryBuild(small), small.text());
            }
        });
    }

    @Test
    void mostCasesHaveABuild() {
        List<Boolean> feasible = Seeds.atLeast(400).mapToObj(seed ->
                BruteForce.all(RandomCase.of(seed, RandomCase.Size.LISTABLE)).isEmpty()).toList();
        assertThat(feasible.stream().filter(empty -> !empty).count()).isBetween(feasible.size() / 2L, feasible.size() * 3L / 4);
    }
}
