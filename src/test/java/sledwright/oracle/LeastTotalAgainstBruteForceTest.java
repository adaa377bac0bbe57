package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import sledwright.domain.Energy;
import sledwright.domain.Objective;
import sledwright.domain.Request;

/**
 * The least of price and energy against the list of every build, whose energy a second reading works out: the best and every alternative, also
 * where drives, cards and enclosures are chosen by it, and where the search is cut off. More seeds by {@code -Dsledwright.seeds=5000}.
 */
class LeastTotalAgainstBruteForceTest {

    private static final int SEEDS = 120;

    /** The same case where the least of price and energy is asked for. */
    static RandomCase counting(RandomCase that) {
        SplittableRandom random = new SplittableRandom(31 * that.seed() + 3);
        Energy energy = new Energy(random.nextInt(1, 7), random.nextDouble(0.5, random.nextBoolean() ? 8 : 80), random.nextDouble(0.1, 1));
        Request request = that.request().withEnergy(Optional.of(energy)).withObjective(Objective.LEAST_TOTAL);
        return that.with(request);
    }

    private static String judge(RandomCase that) {
        return Agreement.withEveryBuildInTimeAndCutOff(that);
    }

    @Test
    void theBestAndItsAlternativesAreThoseOfTheList() {
        Disagreement.none(SEEDS, seed -> counting(RandomCase.of(seed, RandomCase.Size.LISTABLE)), LeastTotalAgainstBruteForceTest::judge);
    }

    @Test
    void drivesCardsAndEnclosuresAreChosenByIt() {
        Disagreement.none(SEEDS, seed -> counting(RandomEquipment.of(seed)), LeastTotalAgainstBruteForceTest::judge);
    }

    /** Otherwise the least price would do. */
    @Test
    void itIsOftenAnotherBuildThanTheCheapest() {
        AtomicInteger other = new AtomicInteger();
        AtomicInteger set = new AtomicInteger();
        Seeds.fixed(200).forEach(seed -> {
            other.addAndGet(differs(counting(RandomCase.of(seed, RandomCase.Size.LISTABLE))));
            set.addAndGet(differs(counting(RandomEquipment.of(seed))));
        });
        assertThat(other.get()).isGreaterThan(15);
        assertThat(set.get()).isGreaterThan(10);
    }

    private static int differs(RandomCase that) {
        Optional<Candidate> least = BruteForce.all(that).stream().min(Candidate.order(that.request()));
        Optional<Candidate> cheapest = BruteForce.all(that.with(that.request().withObjective(Objective.CHEAPEST))).stream()
                .min(Candidate.order(that.request().withObjective(Objective.CHEAPEST)));
        return least.map(Candidate::price).equals(cheapest.map(Candidate::price)) ? 0 : 1;
    }
}
