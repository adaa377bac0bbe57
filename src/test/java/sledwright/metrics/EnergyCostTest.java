package sledwright.metrics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import sledwright.domain.Energy;
import sledwright.domain.Limits;
import sledwright.domain.Supply;

class EnergyCostTest {

    private static Supply supply(Map<Integer, Double> efficiency) {
        return new Supply("S", "supply", 2, 1, 750, 0, new TreeMap<>(efficiency));
    }

    private static final Supply PAIR = supply(Map.of(10, 80.0, 20, 88.0, 50, 92.0, 100, 88.0));

    /** 500 W at 60 % are 300 W: 20 % of each of two supplies of 750 W, at 88 %. For 4 years of 8760 hours at 30 a kWh. */
    @Test
    void meanLoadOverTheEfficiencyAtItsShare() {
        Energy energy = new Energy(4, 30, 0.6);
        assertThat(EnergyCost.meanW(500, Optional.of(PAIR), Limits.NONE, 0.6)).isCloseTo(300 / 0.88, Offset.offset(1e-9));
        assertThat(EnergyCost.kwh(2, 500, Optional.of(PAIR), Limits.NONE, energy)).isCloseTo(2 * 300 / 0.88 / 1000 * 8760 * 4, Offset.offset(1e-6));
        assertThat(EnergyCost.of(2, 500, Optional.of(PAIR), Limits.NONE, energy)).isEqualTo(716_727);
    }

    @Test
    void unknownLossIsLeftOut() {
        assertThat(EnergyCost.meanW(500, Optional.empty(), Limits.NONE, 0.6)).isEqualTo(300);
        assertThat(EnergyCost.meanW(500, Optional.of(supply(Map.of())), Limits.NONE, 0.6)).isEqualTo(300);
    }

    @Test
    void nothingCostsNothing() {
        assertThat(EnergyCost.of(1, 500, Optional.of(PAIR), Limits.NONE, new Energy(0, 30, 1))).isZero();
        assertThat(EnergyCost.of(1, 500, Optional.of(PAIR), Limits.NONE, new Energy(4, 0, 1))).isZero();
        assertThat(EnergyCost.of(1, 500, Optional.of(PAIR), Limits.NONE, new Energy(4, 30, 0))).isZero();
    }

    /** At 10 % 15 W of 150 at an efficiency of 10 % take 150 W; at 20 % 30 W at 90 % take 33. */
    @Test
    void efficiencyThatOutrunsTheLoad() {
        assertThat(EnergyCost.risesWithLoad(PAIR)).isTrue();
        assertThat(EnergyCost.risesWithLoad(supply(Map.of()))).isTrue();
        Supply odd = supply(Map.of(10, 10.0, 20, 90.0));
        assertThat(EnergyCost.risesWithLoad(odd)).isFalse();
        assertThat(EnergyCost.risesWithLoad(supply(Map.of(10, 25.0, 20, 50.0)))).as("twice the load takes as much, not less").isTrue();
        assertThat(PowerDraw.wallW(150, odd, Limits.NONE).getAsDouble()).isGreaterThan(PowerDraw.wallW(300, odd, Limits.NONE).getAsDouble());
    }

    @Test
    void energyIsWithinReason() {
        assertThatThrownBy(() -> new Energy(4, 30, 1.1)).isInstanceOf(IllegalArgumentException.class).hasMessageContaining("duty 1.1");
        assertThatThrownBy(() -> new Energy(-1, 30, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Energy(1, Double.NaN, 1)).isInstanceOf(IllegalArgumentException.class);
    }
}
