package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/**
 * Drives, cards, extras and enclosures: the search against the list of every build, each with the cheapest set that it is valid with; also
 * where it is cut off. More seeds by {@code -Dsledwright.seeds=5000}, other ones by {@code -Dsledwright.seed=100001}.
 */
class FitoutsAgainstBruteForceTest {

    private static final int SEEDS = 300;

    @Test
    void searchFindsWhatTheListOfEveryBuildHolds() {
        Disagreement.none(SEEDS, RandomEquipment::of, Agreement::withEveryBuildInTimeAndCutOff);
    }

    /** A supply of enclosures that is sold in pairs alone: machines are valid only where they are so heavy that two enclosures house them. */
    @Test
    void heavierSetsServeWhereMoreEnclosuresCanBeHadThanFewer() {
        assertThat(Agreement.withEveryBuild(RandomEquipment.of(3837))).isEmpty();
    }

    /** A riser that is wanted and only a controller brings, which needs drives of its own beside cheaper ones that hang on their bays. */
    @Test
    void aControllerThatIsThereForItsRiserHasSomethingToDrive() {
        assertThat(Agreement.withEveryBuild(RandomEquipment.of(40582))).isEmpty();
    }

    /** A controller that is asked for and sold in pairs alone, of which a second one drives. */
    @Test
    void cardsThatAreSoldInPacksAreCountedTogether() {
        assertThat(Agreement.withEveryBuild(RandomEquipment.of(10421))).isEmpty();
        assertThat(Agreement.withEveryBuild(RandomEquipment.of(14313))).isEmpty();
    }
}
