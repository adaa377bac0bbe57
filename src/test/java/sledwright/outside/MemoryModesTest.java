package sledwright.outside;

import static org.assertj.core.api.Assertions.assertThat;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.module;
import static sledwright.samples.Samples.require;

import java.util.List;
import org.junit.jupiter.api.Test;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModule;
import sledwright.rules.Machine;
import sledwright.rules.Rulebook;

/** S: server makers' published examples for 16 modules of 4 GB, dual-rank, two on each of eight channels: 64 GB. */
class MemoryModesTest {

    private static final MemoryModule R4 = module("R4", 4).ranks(2).make();

    @Test
    void rankSparingLeaves48Of64Gb() {
        assertUsable(MemoryMode.RANK_SPARING, 48);
    }

    @Test
    void mirroringLeaves32Of64Gb() {
        assertUsable(MemoryMode.MIRRORED, 32);
    }

    @Test
    void independentLeavesAll() {
        assertUsable(MemoryMode.INDEPENDENT, 64);
    }

    private static void assertUsable(MemoryMode mode, double gb) {
        Machine machine = machine().stacks(List.of(List.of(R4, R4), List.of(R4, R4), List.of(R4, R4), List.of(R4, R4)))
                .require(require().mode(mode).make()).make();
        assertThat(machine.figures().memoryGb()).isEqualTo(64);
        assertThat(machine.figures().usableGb()).isEqualTo(gb);
        assertThat(Rulebook.judge(machine)).isEmpty();
    }
}
