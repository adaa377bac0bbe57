package sledwright.outside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import sledwright.restock.Levels;
import sledwright.restock.Newsvendor;

/** Stock formulas against textbooks. */
class StockLevelsTest {

    /** Snyder and Shen, "Fundamentals of Supply Chain Theory", Example 4.3. */
    @Test
    void newsvendorOfSnyderAndShen() {
        Newsvendor best = Newsvendor.normal(0.18, 0.70, 50, 8);
        assertThat(best.quantity()).isCloseTo(56.60395592743389, within(1e-9));
        assertThat(best.cost()).isCloseTo(1.9976051931766445, within(1e-9));
    }

    /** Critical ratio 0.9: the same formula on other published figures. */
    @Test
    void newsvendorOfCriticalRatioNineTenths() {
        Newsvendor best = Newsvendor.normal(2, 18, 120, 10);
        assertThat(best.quantity()).isCloseTo(132.815515655446, within(1e-9));
        assertThat(best.cost()).isCloseTo(35.09966638749737, within(1e-8));
    }

    /** Chopra, "Supply Chain Management", Example 11-4. */
    @Test
    void levelOfChopraEleven() {
        Levels.Service service = Levels.service(250, 150, 2, 1000, 600);
        assertThat(service.safetyStock()).isEqualTo(100);
        assertThat(service.cycleService()).isCloseTo(0.68, within(0.005));
        assertThat(service.expectedShortage()).isCloseTo(43.86, within(0.01));
        assertThat(service.fillRate()).isCloseTo(0.956, within(0.0005));
    }

    /** Chopra, "Supply Chain Management", Example 12-1. */
    @Test
    void levelOfChopraTwelve() {
        Levels.Service service = Levels.service(2500, 500, 2, 10_000, 6000);
        assertThat(service.safetyStock()).isEqualTo(1000);
        assertThat(service.cycleService()).isCloseTo(0.9214, within(0.00005));
        assertThat(service.expectedShortage()).isCloseTo(25.13, within(0.01));
        assertThat(service.fillRate()).isCloseTo(0.9975, within(0.00005));
    }

    @Test
    void pointThatSufficesForAShareOfLeadTimes() {
        double point = Levels.point(250, 150, 2, 0.9);
        assertThat(Levels.service(250, 150, 2, 1000, point).cycleService()).isCloseTo(0.9, within(1e-9));
    }
}
