package sledwright.outside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sledwright.samples.Samples.limit;
import static sledwright.samples.Samples.supply;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sledwright.domain.Limits;
import sledwright.domain.Supply;
import sledwright.metrics.PowerDraw;

/**
 * S: the efficiency levels of the 80 PLUS programme, per cent at 10, 20, 50 and 100 % of load, internal supplies at 115 V and redundant
 * internal ones at 230 V. Only Titanium has a point at 10 %. Between the points the model is linear (D).
 */
class EightyPlusTest {

    private static final int[] SHARES = {10, 20, 50, 100};
    private static final double NONE = 0;

    record Level(String name, double mainsV, double... percents) {

        NavigableMap<Integer, Double> table() {
            NavigableMap<Integer, Double> table = new TreeMap<>();
            for (int i = 0; i < SHARES.length; i++) {
                if (percents[i] != NONE) {
                    table.put(SHARES[i], percents[i]);
                }
            }
            return table;
        }

        @Override
        public String toString() {
            return "%s at %.0f V".formatted(name, mainsV);
        }
    }

    static Stream<Level> levels() {
        return Stream.of(
                new Level("Bronze", 115, NONE, 82, 85, 82),
                new Level("Silver", 115, NONE, 85, 88, 85),
                new Level("Gold", 115, NONE, 87, 90, 87),
                new Level("Platinum", 115, NONE, 90, 92, 89),
                new Level("Titanium", 115, 90, 92, 94, 90),
                new Level("Bronze", 230, NONE, 81, 85, 81),
                new Level("Silver", 230, NONE, 85, 89, 85),
                new Level("Gold", 230, NONE, 88, 92, 88),
                new Level("Platinum", 230, NONE, 90, 94, 91),
                new Level("Titanium", 230, 90, 94, 96, 91));
    }

    @ParameterizedTest
    @MethodSource("levels")
    void thePointsReproduce(Level level) {
        assertThat(level.table()).hasSize(level.name().equals("Titanium") ? 4 : 3);
        level.table().forEach((share, percent) ->
                assertThat(PowerDraw.efficiencyPercent(level.table(), share)).as("%s, %d %%", level, share).isEqualTo(percent));
    }

    @ParameterizedTest
    @MethodSource("levels")
    void linearBetweenThePoints(Level level) {
        List<Map.Entry<Integer, Double>> points = new ArrayList<>(level.table().entrySet());
        for (int i = 1; i < points.size(); i++) {
            double from = points.get(i - 1).getKey();
            double to = points.get(i).getKey();
            for (double along : new double[] {0.25, 0.5, 0.9}) {
                double expected = (1 - along) * points.get(i - 1).getValue() + along * points.get(i).getValue();
                assertThat(PowerDraw.efficiencyPercent(level.table(), from + along * (to - from))).as("%s, %.2f of the way from %.0f to %.0f %%",
                        level, along, from, to).isCloseTo(expected, within(1e-9));
            }
        }
    }

    /** A pair of 800 W that shares 800 W runs at half load; alone, one of them runs at full load. */
    @ParameterizedTest
    @MethodSource("levels")
    void wallPowerFollowsTheShare(Level level) {
        Limits site = limit().mainsV(level.mainsV()).make();
        Supply pair = supply("PAIR", 2, 1, 800, 800, level.table());
        Supply single = supply("ONE", 1, 0, 800, 800, level.table());
        assertThat(PowerDraw.wallW(800, pair, site).orElseThrow()).isCloseTo(800 / (level.table().get(50) / 100), within(1e-9));
        assertThat(PowerDraw.wallW(800, single, site).orElseThrow()).isCloseTo(800 / (level.table().get(100) / 100), within(1e-9));
        assertThat(PowerDraw.wallW(320, pair, site).orElseThrow()).isCloseTo(320 / (level.table().get(20) / 100), within(1e-9));
    }
}
