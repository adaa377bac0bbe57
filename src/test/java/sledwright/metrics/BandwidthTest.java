package sledwright.metrics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sledwright.samples.Samples.P10;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.R32;
import static sledwright.samples.Samples.machine;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;

class BandwidthTest {

    @Test
    void balanced() {
        assertThat(Bandwidth.ofSocketGbs(2400, 16, 16, 16, 16)).isEqualTo(4 * 19.2);
        assertThat(Bandwidth.ofMachineGbs(2, 2400, 64, 16)).isEqualTo(153.6);
    }

    @Test
    void someChannelsEmpty() {
        assertThat(Bandwidth.ofSocketGbs(2400, 16, 16, 0, 0)).isEqualTo(2 * 19.2);
        assertThat(Bandwidth.ofSocketGbs(2400, 16, 0, 0, 0)).isEqualTo(19.2);
    }

    /** 64 GB at four channels (76.8) and 16 GB at one (19.2): 80 / (64 / 76.8 + 16 / 19.2) = 48. */
    @Test
    void oneChannelHoldsTwiceAsMuch() {
        assertThat(Bandwidth.ofSocketGbs(2400, 32, 16, 16, 16)).isCloseTo(48, within(1e-9));
    }

    /** Three regions: 32 GB on four channels, 24 on three, 16 on one: 72 / (32 / 76.8 + 24 / 57.6 + 16 / 19.2) = 43.2. */
    @Test
    void threeLevels() {
        assertThat(Bandwidth.ofSocketGbs(2400, 32, 16, 16, 8)).isCloseTo(43.2, within(1e-9));
    }

    @Test
    void noMemoryNoBandwidth() {
        assertThat(Bandwidth.ofSocketGbs(2400, 0, 0, 0, 0)).isZero();
        assertThat(Bandwidth.ofSocketGbs(2400)).isZero();
    }

    /** The closed form against the regions as the rules state them. */
    @Test
    void regionsAndClosedFormAgree() {
        long seed = 20250101;
        Random random = new Random(seed);
        for (int round = 0; round < 500; round++) {
            int[] channelsGb = IntStream.range(0, 1 + random.nextInt(8)).map(i -> 4 * random.nextInt(9)).toArray();
            assertThat(Bandwidth.ofSocketGbs(2666, channelsGb)).as("seed %d, round %d: %s", seed, round, IntStream.of(channelsGb).boxed().toList())
                    .isCloseTo(byRegions(2666, channelsGb), within(1e-9));
        }
    }

    @Test
    void machineIsTheSumOverItsSockets() {
        Build build = machine().stacks(List.of(List.of(R32), List.of(R16), List.of(R16), List.of(R16))).build();
        assertThat(Bandwidth.ofMachineGbs(build, 2400)).isEqualTo(96);
        assertThat(Bandwidth.ofMachineGbs(2, 2400, 80, 32)).isEqualTo(96);
    }

    @Test
    void emptySocketAddsNothing() {
        Build build = machine().processors(P10).channels(4, R16).build();
        assertThat(Bandwidth.ofMachineGbs(build, 2400)).isEqualTo(76.8);
    }

    private static double byRegions(int speedMts, int... channelsGb) {
        int[] levels = IntStream.of(channelsGb).filter(gb -> gb > 0).sorted().distinct().toArray();
        double total = 0;
        double time = 0;
        int below = 0;
        for (int level : levels) {
            long width = IntStream.of(channelsGb).filter(gb -> gb >= level).count();
            double region = (double) (level - below) * width;
            total += region;
            time += region / (width * speedMts * 8 / 1000.0);
            below = level;
        }
        return total == 0 ? 0 : total / time;
    }
}
