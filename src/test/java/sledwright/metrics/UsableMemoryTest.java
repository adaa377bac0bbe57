package sledwright.metrics;

import static org.assertj.core.api.Assertions.assertThat;
import static sledwright.samples.Samples.P10;
import static sledwright.samples.Samples.Q32;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.R32;
import static sledwright.samples.Samples.R8;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.platform;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.domain.MemoryMode;
import sledwright.domain.Platform;

class UsableMemoryTest {

    private static final Build EIGHT_OF_16 = machine().channels(4, R16).build();

    @Test
    void independentIsAll() {
        assertThat(UsableMemory.gb(EIGHT_OF_16, MemoryMode.INDEPENDENT)).isEqualTo(128);
    }

    @Test
    void mirroredIsThePlatformsShare() {
        Platform third = platform().mirrored(OptionalDouble.of(1.0 / 3)).make();
        assertThat(UsableMemory.gb(EIGHT_OF_16, MemoryMode.MIRRORED)).isEqualTo(64);
        assertThat(UsableMemory.gb(machine(third).channels(4, R16).build(), MemoryMode.MIRRORED)).isEqualTo(42.666667);
    }

    @Test
    void mirroredIsNothingWhereThePlatformDoesNotMirror() {
        Platform plain = platform().mirrored(OptionalDouble.empty()).make();
        assertThat(UsableMemory.gb(machine(plain).channels(4, R16).build(), MemoryMode.MIRRORED)).isZero();
    }

    /** Each of eight channels gives up 8 GB, a rank of its only module. */
    @Test
    void sparingTakesARankOfEveryChannel() {
        assertThat(UsableMemory.gb(EIGHT_OF_16, MemoryMode.RANK_SPARING)).isEqualTo(64);
    }

    /** The largest rank of a channel goes: 16 GB of the 32 GB module with two ranks, not 8 of its neighbour. */
    @Test
    void sparingTakesTheLargestRank() {
        assertThat(UsableMemory.sparedGb(List.of(R32, R16))).isEqualTo(16);
        assertThat(UsableMemory.sparedGb(List.of(Q32, R16))).isEqualTo(8);
        assertThat(UsableMemory.sparedGb(List.of(R8, R8))).isEqualTo(8);
        assertThat(UsableMemory.sparedGb(List.of())).isZero();
        Build build = machine().processors(P10).channels(4, R32, R16).build();
        assertThat(UsableMemory.gb(build, MemoryMode.RANK_SPARING)).isEqualTo(4 * 48 - 4 * 16);
    }
}
