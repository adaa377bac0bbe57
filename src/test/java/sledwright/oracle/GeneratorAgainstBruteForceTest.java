package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/**
 * The search against the list of every build: the best, its figures, and every alternative in order. More seeds by
 * {@code -Dsledwright.seeds=5000}, other ones by {@code -Dsledwright.seed=100001}.
 */
class GeneratorAgainstBruteForceTest {

    private static final int SEEDS = 400;

    @Test
    void searchFindsWhatTheListOfEveryBuildHolds() {
        Disagreement.none(SEEDS, RandomCase.Size.LISTABLE, Agreement::withEveryBuild);
    }

    @Test
    void someTwoThirdsOfTheCasesHaveABuild() {
        long cases = Seeds.atLeast(SEEDS).count();
        long feasible = Seeds.atLeast(SEEDS).filter(seed -> !BruteForce.all(RandomCase.of(seed, RandomCase.Size.LISTABLE)).isEmpty()).count();
        assertThat((double) feasible / cases).isBetween(0.5, 0.8);
    }
}
