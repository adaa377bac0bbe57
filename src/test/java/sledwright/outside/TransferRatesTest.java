package sledwright.outside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sledwright.metrics.Bandwidth;

/**
 * Transfer rate -> designation and GB/s of a channel of 64 data bits.
 *
 * <p>Published figures are those of the exact rate (DDR3-1066 is 1066 2/3), or rounded as the module label is, hence half a per cent.
 * The designation is the figure in MB/s, rounded to hundreds in either direction as labels do.
 */
class TransferRatesTest {

    /** S: JEDEC JESD79-3, as quoted in published material. */
    @ParameterizedTest
    @CsvSource({"1066, 8500, 8.533", "1333, 10600, 10.667", "1600, 12800, 12.8", "1866, 14900, 14.933"})
    void ddr3(int mts, int designation, double gbs) {
        assertRate(mts, designation, gbs);
    }

    /** S: System x3650 M5 installation and service guide, p. 184; the standard is JEDEC JESD79-4. */
    @ParameterizedTest
    @CsvSource({"1600, 12800, 12.8", "1866, 14900, 14.93", "2133, 17000, 17.0", "2400, 19200, 19.2"})
    void ddr4(int mts, int designation, double gbs) {
        assertRate(mts, designation, gbs);
    }

    /**
     * S for PC4-25600. For the first two the rounding of the designation differs between labels (21300 or 21333, 23400 or 23466), so
     * the hundreds are not held to more than that; the GB/s follow by arithmetic (D).
     */
    @ParameterizedTest
    @CsvSource({"2666, 21300, 21.33", "2933, 23400, 23.47", "3200, 25600, 25.6"})
    void ddr4Later(int mts, int designation, double gbs) {
        assertRate(mts, designation, gbs);
    }

    /** S for the figure of 38.4 GB/s; the designation PC5-38400 is from memory (M) and only repeats it (D). */
    @ParameterizedTest
    @CsvSource({"4800, 38400, 38.4"})
    void ddr5(int mts, int designation, double gbs) {
        assertRate(mts, designation, gbs);
    }

    private static void assertRate(int mts, int designation, double gbs) {
        assertThat(Bandwidth.ofChannelGbs(mts)).isCloseTo(gbs, withinPercentage(0.5));
        assertThat(1000 * Bandwidth.ofChannelGbs(mts)).isCloseTo(designation, offset(100.0));
    }
}
