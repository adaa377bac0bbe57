package sledwright.outside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sledwright.metrics.Bandwidth;

/**
 * Bandwidth of partly and unevenly filled sockets against published measurements, within five points: where few channels are filled,
 * machines measure three to four points above the model.
 */
class InterleavingTest {

    private static final double POINTS = 5;

    /** S: thomas-krenn.com wiki, an eight-channel processor measured with 2, 4 and 8 modules, per cent of the full population. */
    @ParameterizedTest
    @CsvSource({"2, 28", "4, 54", "8, 100"})
    void eightChannelsPartlyFilled(int modules, double measuredPercent) {
        int[] channelsGb = new int[8];
        Arrays.fill(channelsGb, 0, modules, 16);
        double full = Bandwidth.ofSocketGbs(3200, 16, 16, 16, 16, 16, 16, 16, 16);
        assertThat(100 * Bandwidth.ofSocketGbs(3200, channelsGb) / full).isCloseTo(measuredPercent, offset(POINTS));
    }

    /** S: F. Denneman, "Memory deep dive", 2015: six modules on four channels, two of them with a second one, lose up to 30 %. */
    @Test
    void sixModulesOnFourChannels() {
        double balanced = Bandwidth.ofSocketGbs(2133, 32, 32, 32, 32);
        double lost = 100 * (1 - Bandwidth.ofSocketGbs(2133, 32, 32, 16, 16) / balanced);
        assertThat(lost).isCloseTo(30, offset(POINTS));
    }

    /** D: the rate of a uniform sweep can't exceed what the channels give together, nor fall below what one channel gives. */
    @Test
    void betweenOneChannelAndAll() {
        assertThat(Bandwidth.ofSocketGbs(2400, 64, 8, 8, 8)).isBetween(Bandwidth.ofChannelGbs(2400), 4 * Bandwidth.ofChannelGbs(2400));
    }
}
