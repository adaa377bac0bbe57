package sledwright.planner.order.relax;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Against every choice of a set of traits for every machine. */
class SharesTest {

    private static final int CASES = 200;

    @Test
    void itIsTheCheapestChoice() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            int machines = random.nextInt(1, 5);
            int[] must = random.ints(random.nextInt(1, 4), 1, machines + 1).toArray();
            long[] bySet = random.longs(1 << must.length, 1, 100).toArray();
            // What has more traits takes no less, and may not be had at all.
            for (int set = 1; set < bySet.length; set++) {
                for (int trait = 0; trait < must.length; trait++) {
                    bySet[set] = (set >> trait & 1) == 1 ? Math.max(bySet[set], bySet[set & ~(1 << trait)]) : bySet[set];
                }
                bySet[set] = random.nextInt(12) == 0 ? Long.MAX_VALUE : bySet[set];
            }
            assertThat(new Shares(machines, must).least(bySet)).as("seed %d", seed).isEqualTo(least(bySet, must, machines));
        }
    }

    private static long least(long[] bySet, int[] must, int machines) {
        if (machines == 0) {
            for (int some : must) {
                if (some > 0) {
                    return ColumnGeneration.NEVER;
                }
            }
            return 0;
        }
        long least = ColumnGeneration.NEVER;
        for (int set = 0; set < bySet.length; set++) {
            int[] left = must.clone();
            for (int trait = 0; trait < must.length; trait++) {
                left[trait] -= set >> trait & 1;
            }
            long rest = least(bySet, left, machines - 1);
            if (bySet[set] < Long.MAX_VALUE && rest < ColumnGeneration.NEVER) {
                least = Math.min(least, bySet[set] + rest);
            }
        }
        return least;
    }
}
