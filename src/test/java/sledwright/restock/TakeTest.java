package sledwright.restock;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Rows of numbers against taking parts one by one. */
class TakeTest {

    private static final int POOLS = 20;

    /** Parts of one to five pools of their own, of which some are not to be taken. */
    @Test
    void ofEachPartItsPoolsAreDrawnOnInTheirOrderOrNothingIsTaken() {
        for (long seed = 0; seed < 2000; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            int[][] pools = new int[4][];
            int next = 0;
            for (int part = 0; part < pools.length; part++) {
                pools[part] = IntStream.range(next, next + random.nextInt(1, 6)).toArray();
                next += pools[part].length;
            }
            int[] units = random.ints(pools.length, 1, 9).toArray();
            int[] parts = IntStream.range(0, pools.length).filter(part -> random.nextInt(4) > 0).toArray();
            // Hasty customers find some of the pools; of the parts that never run out for them none is taken.
            int[][] early = Arrays.stream(pools).map(of -> Arrays.copyOf(of, random.nextInt(1, of.length + 1))).toArray(int[][]::new);
            int[] scarce = Arrays.stream(parts).filter(part -> random.nextInt(4) > 0).toArray();
            int[] stock = Arrays.copyOf(random.ints(POOLS, 0, 9).toArray(), POOLS + 1);
            int[] shortOf = {0};
            // An order is tried with what was missing for the one before in mind, whoever that was for.
            for (int order = 0; order < 6; order++) {
                boolean hasty = random.nextBoolean();
                int[] taken = hasty ? scarce : parts;
                int[][] from = hasty ? early : pools;
                int[] row = Take.row(taken, units, from, POOLS);
                int[] before = stock.clone();
                int[] one = one(taken, units, from, before);
                assertThat(Take.isThere(row, stock)).as("seed %d", seed).isEqualTo(one != null);
                assertThat(Take.isTaken(row, stock, shortOf, 0)).as("seed %d", seed).isEqualTo(one != null);
                assertThat(stock).as("seed %d", seed).isEqualTo(one == null ? before : one);
                Arrays.setAll(stock, pool -> pool < POOLS ? stock[pool] + random.nextInt(3) : 0);
            }
        }
    }

    /** What is left; null where something is missing. */
    private static int[] one(int[] parts, int[] units, int[][] pools, int[] stock) {
        int[] left = stock.clone();
        for (int part : parts) {
            int missing = units[part];
            for (int pool : pools[part]) {
                int taken = Math.min(missing, left[pool]);
                left[pool] -= taken;
                missing -= taken;
            }
            if (missing > 0) {
                return null;
            }
        }
        return left;
    }
}
