package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.ortools.Loader;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/**
 * Plans of random small stocks against the best whole purchases that CP-SAT finds, with every valid machine of each class and each course
 * known in advance: the model of {@code docs/restock.md} read a second time. More seeds by {@code -Dsledwright.seeds=500}.
 */
class RestockAgainstCpSatTest {

    private static final int SEEDS = 5;

    /** Of some seeds the quantities once earned more than the bound. */
    @Test
    void noPlanIsBetterThanTheBound() {
        Loader.loadNativeLibraries();
        List<String> wrong = new ArrayList<>();
        int[] judged = new int[1];
        LongStream.concat(Seeds.chosen(SEEDS), LongStream.of(230, 283, 372)).forEach(one -> {
            RestockCase that = new RestockCase(one);
            if (that.isSmall()) {
                judged[0]++;
                that.judge(wrong);
            }
        });
        assertThat(wrong).isEmpty();
        assertThat(judged[0]).isGreaterThan(SEEDS / 2);
    }
}
