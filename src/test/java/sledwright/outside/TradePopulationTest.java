package sledwright.outside;

import static org.assertj.core.api.Assertions.assertThat;
import static sledwright.outside.TradeBoard.LONG;
import static sledwright.outside.TradeBoard.LRDIMM_64;
import static sledwright.outside.TradeBoard.P120;
import static sledwright.outside.TradeBoard.P135;
import static sledwright.outside.TradeBoard.P145;
import static sledwright.outside.TradeBoard.P85;
import static sledwright.outside.TradeBoard.PLATFORM;
import static sledwright.outside.TradeBoard.RDIMM_32;
import static sledwright.outside.TradeBoard.RDIMM_32_2666;
import static sledwright.outside.TradeBoard.RDIMM_32_FOUR_RANKS;
import static sledwright.outside.TradeBoard.SHORT;
import static sledwright.samples.Samples.machine;

import java.util.List;
import org.junit.jupiter.api.Test;
import sledwright.domain.MemoryModule;
import sledwright.metrics.MemorySpeed;
import sledwright.metrics.SpareSlots;
import sledwright.rules.Machine;
import sledwright.rules.Rulebook;
import sledwright.rules.Violation;
import sledwright.rules.cooling.BlockedSlot;
import sledwright.rules.cooling.HeatSinkRating;
import sledwright.rules.memory.RankLimit;
import sledwright.samples.MachineSketch;

/** Facts of the trade that rules and figures alone decide. All of them: common practice, no source. */
class TradePopulationTest {

    @Test
    void fourChannelsOfThreeSlotsBesideTwoSocketsAre24() {
        assertThat(PLATFORM.board().slots()).hasSize(24);
    }

    @Test
    void topsOutAt768GbWith32GbRdimmsAndAt1536With64GbLrdimms() {
        assertThat(full(RDIMM_32).figures().memoryGb()).isEqualTo(768);
        assertThat(Rulebook.judge(full(RDIMM_32))).isEmpty();
        assertThat(full(LRDIMM_64).figures().memoryGb()).isEqualTo(1536);
        assertThat(Rulebook.judge(full(LRDIMM_64))).isEmpty();
    }

    @Test
    void aModuleRated2666RunsAt2400OnABoardFor2400() {
        assertThat(MemorySpeed.of(machine(PLATFORM).channels(4, RDIMM_32_2666).build()).mts()).isEqualTo(2400);
        assertThat(MemorySpeed.of(machine(PLATFORM).channels(4, RDIMM_32).build()).mts()).isEqualTo(2400);
    }

    @Test
    void upTo120WTheShortHeatSinkAndAll24Slots() {
        assertThat(HeatSinkRating.allows(SHORT, P85)).isTrue();
        assertThat(HeatSinkRating.allows(SHORT, P120)).isTrue();
        assertThat(SpareSlots.uncovered(PLATFORM, SHORT, 2)).isEqualTo(24);
        assertThat(Rulebook.judge(machine(PLATFORM).processors(2, P120).cooling(SHORT).channels(4, RDIMM_32, RDIMM_32, RDIMM_32).make())).isEmpty();
    }

    @Test
    void above120WTheLongHeatSinkWhichLeaves20() {
        assertThat(HeatSinkRating.allows(SHORT, P135)).isFalse();
        assertThat(HeatSinkRating.allows(LONG, P135)).isTrue();
        assertThat(HeatSinkRating.allows(LONG, P145)).isTrue();
        assertThat(SpareSlots.uncovered(PLATFORM, LONG, 2)).isEqualTo(20);
        MachineSketch twenty = machine(PLATFORM).processors(2, P145).cooling(LONG).channels(2, RDIMM_32, RDIMM_32, RDIMM_32);
        for (int socket = 0; socket < 2; socket++) {
            twenty.channel(socket, 2, RDIMM_32, RDIMM_32).channel(socket, 3, RDIMM_32, RDIMM_32);
        }
        assertThat(twenty.make().build().modules()).hasSize(20);
        assertThat(Rulebook.judge(twenty.make())).isEmpty();
        assertThat(Rulebook.judge(twenty.slot("1C3", RDIMM_32).slot("2C3", RDIMM_32).make())).extracting(Violation::rule).containsOnly(BlockedSlot.ID);
    }

    @Test
    void sixteenModulesOf32GbGive512InFirstAndSecondSlots() {
        Machine machine = machine(PLATFORM).channels(4, RDIMM_32, RDIMM_32).make();
        assertThat(machine.build().modules()).hasSize(16);
        assertThat(machine.figures().memoryGb()).isEqualTo(512);
        assertThat(machine.build().modules().keySet()).noneMatch(slot -> slot.position() == 2);
        assertThat(Rulebook.judge(machine)).isEmpty();
    }

    @Test
    void theThirdSlotIsWhereTheRankLimitBites() {
        assertThat(Rulebook.judge(machine(PLATFORM).channels(4, RDIMM_32_FOUR_RANKS, RDIMM_32_FOUR_RANKS).make())).isEmpty();
        assertThat(Rulebook.judge(machine(PLATFORM).channels(4, RDIMM_32_FOUR_RANKS, RDIMM_32_FOUR_RANKS, RDIMM_32_FOUR_RANKS).make()))
                .hasSize(8).extracting(Violation::rule).containsOnly(RankLimit.ID);
        assertThat(Rulebook.judge(machine(PLATFORM).channels(4, LRDIMM_64, LRDIMM_64, LRDIMM_64).make())).isEmpty();
    }

    /** Eight modules: one on every channel, or two on each of the first two of either socket, or three and one. */
    @Test
    void overloadedChannelsBesideEmptyOnesAreSlower() {
        double spread = gbs(List.of(List.of(RDIMM_32), List.of(RDIMM_32), List.of(RDIMM_32), List.of(RDIMM_32)));
        double doubled = gbs(List.of(List.of(RDIMM_32, RDIMM_32), List.of(RDIMM_32, RDIMM_32)));
        double tripled = gbs(List.of(List.of(RDIMM_32, RDIMM_32, RDIMM_32), List.of(RDIMM_32)));
        assertThat(spread).isEqualTo(153.6);
        assertThat(doubled).isEqualTo(76.8);
        assertThat(tripled).isEqualTo(39.808);
    }

    private static double gbs(List<List<MemoryModule>> stacks) {
        return machine(PLATFORM).stacks(stacks).make().figures().bandwidthGbs();
    }

    private static Machine full(MemoryModule module) {
        return machine(PLATFORM).channels(4, module, module, module).make();
    }
}
