package sledwright.generator.memory;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BucketPointsTest {

    private static final int FEW_FIGURES = 12;

    /** The definition, point by point. */
    private static boolean matches(boolean everyWeight, MemoryPoint point, long price, long microwatts) {
        return point.price() <= price && (everyWeight ? point.microwatts() == microwatts && point.slack() == 0 : point.microwatts() <= microwatts);
    }

    private static boolean isReplaced(boolean everyWeight, MemoryPoint old, MemoryPoint by) {
        return old.price() >= by.price() && (everyWeight ? old.microwatts() == by.microwatts() && old.slack() == 0
                : old.microwatts() - old.slack() >= by.microwatts());
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void pointsAreKeptAsEachOneIsHeldAgainstAllOthers(boolean everyWeight) {
        for (long seed = 0; seed < 300; seed++) {
            Random random = new Random(seed);
            BucketPoints points = BucketPoints.of(everyWeight);
            List<MemoryPoint> slowly = new ArrayList<>();
            for (int i = 0; i < 40; i++) {
                long slack = random.nextInt(4) == 0 ? random.nextInt(3) : 0;
                MemoryPoint next = new MemoryPoint(random.nextInt(FEW_FIGURES), 16, 16, 16, 3 + random.nextInt(FEW_FIGURES), slack, null);
                boolean matched = slowly.stream().anyMatch(point -> matches(everyWeight, point, next.price(), next.microwatts() - slack));
                assertThat(points.isMatched(next.price(), next.microwatts() - slack)).as("seed %d, point %d", seed, i).isEqualTo(matched);
                if (!matched) {
                    slowly.removeIf(old -> isReplaced(everyWeight, old, next));
                    slowly.add(next);
                    points.add(next);
                }
                assertThat(points.all()).as("seed %d, point %d", seed, i).containsExactlyInAnyOrderElementsOf(slowly);
            }
        }
    }
}
