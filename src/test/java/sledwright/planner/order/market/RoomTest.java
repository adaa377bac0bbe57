package sledwright.planner.order.market;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import sledwright.samples.Samples;

/** Against the dearest question of {@link SharedDraw}: one unit more, for as long as the lots can give it. */
class RoomTest {

    private static final int CASES = 300;
    private static final int POOLS = 3;

    @Test
    void itIsAsManyUnitsAsCanBeDrawnBesides() {
        int some = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            List<OfferedLot> sources = new ArrayList<>();
            for (int i = random.nextInt(1, 5); i > 0; i--) {
                boolean[] pools = new boolean[POOLS];
                for (int pool = 0; pool < POOLS; pool++) {
                    pools[pool] = random.nextBoolean();
                }
                sources.add(OfferedLot.of(Samples.lot("A", "L" + i, random.nextInt(5), 100), 0, pools, 0, 9));
            }
            int[] need = random.ints(POOLS, 0, 4).toArray();
            SharedDraw draw = new SharedDraw(sources);
            if (draw.picks(need) != null) {
                int room = Room.of(sources, need, 0);
                int[] more = need.clone();
                for (more[0]++; draw.picks(more) != null; more[0]++) {
                    some++;
                }
                assertThat(room).as("seed %d, %s", seed, Arrays.toString(need)).isEqualTo(more[0] - 1 - need[0]);
            }
        }
        assertThat(some).isGreaterThan(CASES / 10);
    }
}
