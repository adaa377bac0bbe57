package sledwright.outside;

import static org.assertj.core.api.Assertions.assertThat;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import sledwright.domain.Workload;
import sledwright.metrics.WorkDone;

/**
 * Work by the two published laws that it is made of.
 *
 * <p>G. Amdahl, "Validity of the single processor approach to achieving large scale computing capabilities", AFIPS 1967: with a share p that
 * runs in parallel, n processors are 1 / ((1 - p) + p / n) times as fast as one. S. Williams, A. Waterman, D. Patterson, "Roofline: an
 * insightful visual performance model for multicore architectures", Communications of the ACM 52(4), 2009: attainable = min(peak, bandwidth x
 * operational intensity). Cores of throughput 1 that share nothing give n; {@code gb_per_unit} is the inverse of the intensity.
 */
class WorkTest {

    private static Workload of(double parallel, double gbPerUnit) {
        return new Workload("", parallel, gbPerUnit, 0);
    }

    /** How many times as fast as one core n cores are. */
    private static double speedUp(double parallel, int cores) {
        return WorkDone.ofCores(cores, cores, of(parallel, 0)) / WorkDone.ofCores(1, 1, of(parallel, 0));
    }

    /** By arithmetic from the law. */
    @Test
    void fiveProcessorsAndAFifthInSeries() {
        assertThat(speedUp(0.8, 5)).isCloseTo(1 / (0.2 + 0.8 / 5), Offset.offset(1e-12)).isCloseTo(2.7778, Offset.offset(1e-4));
    }

    /** As lecture notes on the law have it: never above 1 / (1 - p). */
    @Test
    void theSerialShareIsACeiling() {
        assertThat(speedUp(0.9, 1_000_000)).isLessThan(10).isCloseTo(10, Offset.offset(1e-3));
        assertThat(speedUp(0.99, 10_000_000)).isLessThan(100).isCloseTo(100, Offset.offset(1e-2));
        assertThat(speedUp(0, 64)).isEqualTo(1);
        assertThat(speedUp(1, 64)).isEqualTo(64);
    }

    /** A textbook's exercise, from memory: 100 processors are 80 times as fast with a serial share of 0.25 %; by arithmetic 80.16. */
    @Test
    void aQuarterOfAPercentInSeriesLeavesEightyOfAHundred() {
        assertThat(speedUp(0.9975, 100)).isCloseTo(80.16, Offset.offset(0.01));
    }

    /** The paper's dual-socket machine of 17.6 GFlop/s and 15 GB/s; its figures at 0.25 flop a byte and at the ridge by arithmetic. */
    @Test
    void theRooflineOfTheFirstMachine() {
        assertThat(WorkDone.of(17.6, 15, of(1, 1 / 0.25))).isEqualTo(3.75);
        assertThat(WorkDone.heldBy(17.6, 15, of(1, 1 / 0.25))).isEqualTo(WorkDone.Held.MEMORY);
        double ridge = 17.6 / 15;
        assertThat(ridge).isCloseTo(1.17, Offset.offset(0.005));
        assertThat(WorkDone.of(17.6, 15, of(1, 1 / (ridge * 1.01)))).isEqualTo(17.6);
        assertThat(WorkDone.of(17.6, 15, of(1, 1 / (ridge * 0.99)))).isLessThan(17.6);
        assertThat(WorkDone.heldBy(17.6, 15, of(1, 1 / (ridge * 1.01)))).isEqualTo(WorkDone.Held.NOTHING);
    }

    /** Sparse matrix-vector products lie between 0.17 and 0.25 flop a byte, as the paper says: memory feeds 2.55 to 3.75 of 17.6. */
    @Test
    void sparseProductsWaitForMemory() {
        assertThat(WorkDone.of(17.6, 15, of(1, 1 / 0.17))).isCloseTo(2.55, Offset.offset(1e-6));
    }

    /** A national laboratory's introduction to the model: incrementing a vector does 1 flop for 24 bytes, 0.0417 flop a byte. */
    @Test
    void aVectorIncrementMoves24BytesForEachOperation() {
        assertThat(WorkDone.ofMemory(24, of(1, 24))).isEqualTo(1);
        assertThat(1 / 24.0).isCloseTo(0.0417, Offset.offset(5e-5));
    }

    @Test
    void withoutTrafficMemorySetsNoCeiling() {
        assertThat(WorkDone.ofMemory(0.001, of(0.5, 0))).isInfinite();
        assertThat(WorkDone.of(300, 0.001, Workload.NONE)).isEqualTo(300);
        assertThat(WorkDone.heldBy(100, 1, of(0.5, 0))).isEqualTo(WorkDone.Held.SERIAL);
        assertThat(WorkDone.ofCores(0, 0, of(0.5, 0))).isZero();
    }
}
