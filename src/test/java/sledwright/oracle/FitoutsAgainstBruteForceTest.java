package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Drives, cards, extras and enclosures: the search against the list of every build, each with the cheapest set that it is valid with. More
 * seeds by {@code -Dsledwright.seeds=5000}, other ones by {@code -Dsledwright.seed=100001}.
 */
class FitoutsAgainstBruteForceTest {

    private static final int SEEDS = 300;

    @Test
    void searchFindsWhatTheListOfEveryBuildHolds() {
        List<Long> failing = new ArrayList<>();
        List<String> shown = new ArrayList<>();
        Seeds.chosen(SEEDS).forEach(seed -> {
            RandomCase that = RandomEquipment.of(seed);
            String words = Agreement.withEveryBuild(that);
            if (!words.isEmpty()) {
                failing.add(seed);
                if (shown.size() < 2) {
                    shown.add(words + that.text());
                }
            }
        });
        assertThat(failing).as(String.join("\n\n", shown)).isEmpty();
    }
}
