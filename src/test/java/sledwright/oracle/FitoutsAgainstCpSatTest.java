package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.generator.Findings;
import sledwright.generator.Status;
import sledwright.samples.Samples;

/**
 * Drives, cards and extras too many to list, against an outside solver: whether there is a build, and the price of the cheapest. More seeds
 * by {@code -Dsledwright.seeds=2000}, other ones by {@code -Dsledwright.seed=100001}.
 */
class FitoutsAgainstCpSatTest {

    private static final int SEEDS = 20;

    @Test
    void searchFindsWhatTheSolverProves() {
        List<String> wrong = new ArrayList<>();
        List<Long> undecided = new ArrayList<>();
        int[] found = new int[2];
        Seeds.chosen(SEEDS).mapToObj(RandomStorage::of).forEach(that -> {
            try {
                OptionalLong proved = cheapest(that);
                Findings findings = Agreement.search(that);
                String words = Agreement.soundness(findings, that);
                OptionalLong given = findings.ranked().isEmpty() ? OptionalLong.empty() : OptionalLong.of(findings.ranked().get(0).price().total());
                found[proved.isPresent() ? 0 : 1]++;
                if (!given.equals(proved) || findings.status() == Status.BEST_FOUND || !words.isEmpty()) {
                    wrong.add("seed %s: the search gives %s (%s), the solver %s%n%s%s".formatted(that.seed(), given, findings.status(), proved, words,
                            wrong.size() < 2 ? that.text() : ""));
                }
            } catch (CpSatFitout.UndecidedException tooHard) {
                undecided.add(that.seed());
            }
        });
        assertThat(wrong).isEmpty();
        assertThat(undecided.size()).as("undecided: seeds %s", undecided).isLessThanOrEqualTo((int) (Seeds.chosen(SEEDS).count() / 10));
        assertThat(found[0]).as("cases that have a build").isGreaterThan((int) Seeds.chosen(SEEDS).count() / 3);
    }

    /** One module on each socket beside each number of processors; the rest is the solver's. */
    private static OptionalLong cheapest(RandomCase that) {
        Platform platform = that.catalog().platforms().get(0);
        Request request = that.request();
        OptionalLong best = OptionalLong.empty();
        for (int fitted : platform.processors().counts()) {
            double loadW = platform.power().baseW() + fitted * (Samples.P10.tdpW() + Samples.R16.powerW());
            long each = price(that, platform.sku()) + fitted * (price(that, Samples.P10.sku()) + price(that, Samples.TALL.sku()) + price(that, Samples.R16.sku()))
                    + that.catalog().labour().perMachine() + fitted * that.catalog().labour().perModule();
            double spareW = request.limit().powerW().isPresent() ? request.limit().powerW().getAsDouble() - loadW : -1;
            if (request.limit().powerW().isEmpty() || spareW >= 0) {
                OptionalLong least = CpSatFitout.cheapest(that, platform, fitted, spareW);
                if (least.isPresent() && (best.isEmpty() || least.getAsLong() + request.machines() * each < best.getAsLong())) {
                    best = OptionalLong.of(least.getAsLong() + request.machines() * each);
                }
            }
        }
        return best;
    }

    private static long price(RandomCase that, String sku) {
        return that.catalog().lots(sku).get(0).breaks().get(0).unitPrice();
    }
}
