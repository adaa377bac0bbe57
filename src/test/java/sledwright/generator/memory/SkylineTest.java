package sledwright.generator.memory;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class SkylineTest {

    /** Against a plain list, in which whatever is as wide, as cheap and as light matches. */
    @Test
    void agreesWithALookAtEachPoint() {
        for (long seed = 1; seed <= 300; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            int ranks = random.nextInt(1, 9);
            int figures = random.nextInt(2, 30);
            Skyline skyline = new Skyline(ranks);
            List<long[]> points = new ArrayList<>();
            for (int step = 0; step < 60; step++) {
                int rank = random.nextInt(1, ranks + 1);
                long price = random.nextInt(figures);
                long weight = random.nextInt(figures);
                boolean matched = points.stream().anyMatch(point -> point[0] <= rank && point[1] <= price && point[2] <= weight);
                assertThat(skyline.matches(rank, price, weight)).as("seed %d, step %d", seed, step).isEqualTo(matched);
                if (random.nextInt(3) > 0) {
                    skyline.add(rank, price, weight);
                    points.add(new long[] {rank, price, weight});
                }
            }
        }
    }
}
