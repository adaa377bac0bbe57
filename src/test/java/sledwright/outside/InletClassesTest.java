package sledwright.outside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sledwright.samples.Samples.limit;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sledwright.domain.ModuleType;
import sledwright.domain.Thermal;
import sledwright.domain.Thermal.InletRow;
import sledwright.rules.cooling.InletLimit;

/**
 * ASHRAE TC 9.9 (2021), allowable inlet: A1 to 32, A2 to 35, A3 to 40, A4 to 45 degrees Celsius (S). Thin air takes 1 K for every 300 m
 * above 900 to 950 m in A1 and A2 (S). That it takes 1 K per 175 m in A3 and per 125 m in A4 is from memory for the class, seen for
 * the range, so those two figures stand here as data of a platform: what is checked is what the formula makes of them (D).
 */
class InletClassesTest {

    @ParameterizedTest
    @CsvSource({"32, 300", "35, 300", "40, 175", "45, 125"})
    void theClassesLimitHoldsUpToWhereTheAirGetsThin(double maxInletC, double metresPerKelvin) {
        Thermal thermal = thermal(950, metresPerKelvin, maxInletC);
        assertThat(allows(thermal, maxInletC, 0)).isTrue();
        assertThat(allows(thermal, maxInletC, 950)).isTrue();
        assertThat(allows(thermal, maxInletC + 0.1, 0)).isFalse();
    }

    /** One kelvin for each step of metres: what is allowed falls by exactly that. */
    @ParameterizedTest
    @CsvSource({"32, 300", "35, 300", "40, 175", "45, 125"})
    void everyStepCostsAKelvin(double maxInletC, double metresPerKelvin) {
        Thermal thermal = thermal(950, metresPerKelvin, maxInletC);
        for (int kelvin = 1; kelvin <= 6; kelvin++) {
            double altitudeM = 950 + kelvin * metresPerKelvin;
            assertThat(allows(thermal, maxInletC - kelvin, altitudeM)).as("%d K at %.0f m", kelvin, altitudeM).isTrue();
            assertThat(allows(thermal, maxInletC - kelvin + 0.1, altitudeM)).as("%d K less a tenth at %.0f m", kelvin, altitudeM).isFalse();
        }
    }

    /** S: A2 at 1 K per 300 m from 950 m. At 1850 m that is 3 K, at 3050 m 7 K (D). */
    @Test
    void correctedInletOfA2() {
        Thermal thermal = thermal(950, 300, 35);
        assertThat(thermal.correctedInletC(25, 0)).isEqualTo(25);
        assertThat(thermal.correctedInletC(25, 949)).isEqualTo(25);
        assertThat(thermal.correctedInletC(25, 950)).isEqualTo(25);
        assertThat(thermal.correctedInletC(25, 1100)).isEqualTo(25.5);
        assertThat(thermal.correctedInletC(25, 1850)).isEqualTo(28);
        assertThat(thermal.correctedInletC(25, 3050)).isEqualTo(32);
    }

    /** S: the altitude from which the air counts as thin lies between 900 and 950 m; it is data of the platform. */
    @Test
    void correctedInletFrom900() {
        assertThat(thermal(900, 300, 35).correctedInletC(25, 950)).isCloseTo(25.1667, within(0.0001));
    }

    private static Thermal thermal(double fromM, double metresPerKelvin, double maxInletC) {
        return new Thermal(fromM, metresPerKelvin, List.of(new InletRow(150, maxInletC, Set.of())));
    }

    private static boolean allows(Thermal thermal, double inletC, double altitudeM) {
        return InletLimit.allows(thermal, 105, ModuleType.RDIMM, limit().site(inletC, altitudeM).make());
    }
}
