package sledwright.metrics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sledwright.samples.Samples.P10;
import static sledwright.samples.Samples.PAIR;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.limit;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.module;
import static sledwright.samples.Samples.supply;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.domain.Limits;
import sledwright.domain.Supply;

/** PAIR: two supplies of 750 W (650 at low line), efficiency 82 % at 10 % of load, 88 at 20, 92 at 50, 88 at 100. */
class PowerDrawTest {

    private static final Limits LOW_LINE = limit().mainsV(115).make();

    @Test
    void loadIsBasePlusProcessorsPlusModules() {
        assertThat(PowerDraw.loadW(machine().channels(4, R16).build())).isEqualTo(85 + 2 * 85 + 8 * 4);
        assertThat(PowerDraw.loadW(machine().processors(P10).channels(1, module("R", 16).powerW(3.3).make()).build())).isEqualTo(173.3);
    }

    @Test
    void deliverableWithTheRedundantOnesFailed() {
        assertThat(PowerDraw.deliverableW(PAIR, Limits.NONE)).isEqualTo(750);
        assertThat(PowerDraw.deliverableW(PAIR, LOW_LINE)).isEqualTo(650);
        assertThat(PowerDraw.deliverableW(supply("FOUR", 4, 1, 500, 0, Map.of()), Limits.NONE)).isEqualTo(1500);
    }

    @Test
    void lowLineEndsAt180Volts() {
        assertThat(PAIR.ratedW(limit().mainsV(179.9).make())).isEqualTo(650);
        assertThat(PAIR.ratedW(limit().mainsV(180).make())).isEqualTo(750);
        assertThat(PAIR.ratedW(Limits.NONE)).isEqualTo(750);
    }

    @Test
    void efficiencyAtAndBetweenThePoints() {
        assertThat(PowerDraw.efficiencyPercent(PAIR.efficiency(), 10)).isEqualTo(82);
        assertThat(PowerDraw.efficiencyPercent(PAIR.efficiency(), 15)).isEqualTo(85);
        assertThat(PowerDraw.efficiencyPercent(PAIR.efficiency(), 20)).isEqualTo(88);
        assertThat(PowerDraw.efficiencyPercent(PAIR.efficiency(), 20.3)).isCloseTo(88.04, within(1e-9));
        assertThat(PowerDraw.efficiencyPercent(PAIR.efficiency(), 35)).isEqualTo(90);
        assertThat(PowerDraw.efficiencyPercent(PAIR.efficiency(), 75)).isEqualTo(90);
    }

    @Test
    void efficiencyIsLevelBeyondTheEnds() {
        assertThat(PowerDraw.efficiencyPercent(PAIR.efficiency(), 0)).isEqualTo(82);
        assertThat(PowerDraw.efficiencyPercent(PAIR.efficiency(), 9.99)).isEqualTo(82);
        assertThat(PowerDraw.efficiencyPercent(PAIR.efficiency(), 130)).isEqualTo(88);
        assertThat(PowerDraw.efficiencyPercent(new TreeMap<>(Map.of(50, 92.0)), 12)).isEqualTo(92);
    }

    /** 300 W on two supplies of 750 W are 20 % each: 300 / 0.88. 750 W are 50 % each: 750 / 0.92. */
    @Test
    void wallPowerAtTheShareThatEachSupplyCarries() {
        assertThat(PowerDraw.wallW(300, PAIR, Limits.NONE).orElseThrow()).isCloseTo(340.909, within(0.001));
        assertThat(PowerDraw.wallW(750, PAIR, Limits.NONE).orElseThrow()).isCloseTo(815.217, within(0.001));
    }

    /** 325 W on two supplies of 650 W are 25 % each: 88 + 5/30 x 4 = 88.667 %. */
    @Test
    void wallPowerAtLowLine() {
        assertThat(PowerDraw.wallW(325, PAIR, LOW_LINE).orElseThrow()).isCloseTo(366.541, within(0.001));
    }

    @Test
    void wallPowerIsUnknownWithoutATableOrALowLineRating() {
        Supply bare = supply("BARE", 2, 1, 750, 0, Map.of());
        assertThat(PowerDraw.wallW(300, bare, Limits.NONE)).isEmpty();
        assertThat(PowerDraw.wallW(300, supply("HIGH", 2, 1, 750, 0, Map.of(50, 92.0)), LOW_LINE)).isEmpty();
    }

    @Test
    void ofSeveralMachinesTheHeaviestAndOfEqualsTheFirst() {
        Build light = machine().channels(2, R16).build();
        Build heavy = machine().channels(4, R16).build();
        Build alike = machine().channels(2, R16, R16).build();
        assertThat(PowerDraw.heaviest(List.of(light, heavy, alike))).isSameAs(heavy);
        assertThat(PowerDraw.heaviest(List.of(alike, light, heavy))).isSameAs(alike);
        assertThat(PowerDraw.heaviest(List.of(light))).isSameAs(light);
    }
}
