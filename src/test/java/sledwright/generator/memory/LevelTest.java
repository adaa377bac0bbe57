package sledwright.generator.memory;

import static org.assertj.core.api.Assertions.assertThat;
import static sledwright.samples.PlatformSketch.row;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemorySupport;
import sledwright.domain.ModuleType;
import sledwright.generator.shape.GroupKind;
import sledwright.samples.Samples;

class LevelTest {

    /** Three slots a channel at 2400/2400/1866 MT/s and eight ranks. */
    private static final MemorySupport BOARD = Samples.platform().speeds(row(ModuleType.RDIMM, Set.of(), 2400, 2400, 1866)).make().memory();
    private static final MemoryModule FAST = Samples.module("FAST", 16).mts(2400).make();
    private static final MemoryModule SLOW = Samples.module("SLOW", 16).mts(2133).make();

    private static MemoryModule stack(String sku, int logicalRanks) {
        return Samples.module(sku, 32).ranks(2, logicalRanks).make();
    }

    private static List<Level> levels(MemorySupport memory, boolean sparing, MemoryModule... modules) {
        return Level.of(memory, ModuleType.RDIMM, 0, List.of(modules), sparing);
    }

    @Test
    void aLevelForEachSpeedAtWhichMoreCanBeHeld() {
        List<Level> levels = levels(BOARD, false, FAST, SLOW);
        assertThat(levels).extracting(Level::mts).containsExactly(2400, 2133, 1866);
        assertThat(levels.get(0).groups()).isEqualTo(Map.of(new GroupKind(16, 2, 0, 0b011), List.of(FAST)));
        assertThat(levels.get(1).groups()).isEqualTo(Map.of(new GroupKind(16, 2, 0, 0b011), List.of(FAST, SLOW)));
        assertThat(levels.get(2).groups()).isEqualTo(Map.of(new GroupKind(16, 2, 0, 0b111), List.of(FAST, SLOW)));
        assertThat(levels.get(1).modules()).containsExactly(FAST, SLOW);
        assertThat(levels).allMatch(level -> level.entangled().isEmpty() && level.width() == 0 && level.type() == ModuleType.RDIMM);
    }

    @Test
    void ofNothingThereIsNoLevel() {
        assertThat(levels(BOARD, false)).isEmpty();
        assertThat(levels(BOARD, false, Samples.module("L", 16).type(ModuleType.LRDIMM).make())).isEmpty();
    }

    @Test
    void ranksMatterWhereTheyAreSpared() {
        assertThat(levels(BOARD, true, FAST).get(0).groups().keySet()).containsExactly(new GroupKind(16, 2, 2, 0b011));
    }

    /**
     * With up to two modules of one, two or four ranks beside it, which make no seven, a module of two ranks stays within eight wherever
     * one of a single rank does; one of four does not.
     */
    @Test
    void ranksThatTheLimitCannotTellApart() {
        List<Level> levels = levels(BOARD, false, stack("S1", 1), stack("S2", 2), stack("S4", 4));
        assertThat(levels.get(0).groups().keySet()).extracting(GroupKind::logicalRanks).containsExactly(1, 4);
        // Without the four, two others make up to four ranks, so nothing comes near the limit.
        assertThat(levels(BOARD, false, stack("S1", 1), stack("S2", 2)).get(0).groups().keySet()).extracting(GroupKind::logicalRanks).containsExactly(1);
        MemorySupport tight = Samples.platform().rankLimit(ModuleType.RDIMM, 5).speeds(row(ModuleType.RDIMM, Set.of(), 2400, 2400, 1866)).make().memory();
        assertThat(levels(tight, false, stack("S1", 1), stack("S2", 2)).get(0).groups().keySet()).extracting(GroupKind::logicalRanks).containsExactly(1, 2);
        MemorySupport two = Samples.platform().channels(4, 2).rankLimit(ModuleType.RDIMM, 3).speeds(row(ModuleType.RDIMM, Set.of(), 2400, 2400)).make().memory();
        assertThat(levels(two, false, stack("S1", 1), stack("S2", 2), stack("S3", 3)).get(0).groups().keySet()).extracting(GroupKind::logicalRanks)
                .containsExactly(1, 2, 3);
        MemorySupport one = Samples.platform().channels(4, 1).rankLimit(ModuleType.RDIMM, 3).speeds(row(ModuleType.RDIMM, Set.of(), 2400)).make().memory();
        assertThat(levels(one, false, stack("S3", 3), stack("S4", 4), stack("S5", 5)).get(0).groups().keySet()).extracting(GroupKind::logicalRanks)
                .containsExactly(3, 4);
    }

    /** Alike modules that show the controller different ranks: their groups share a kind; other kinds stand by themselves. */
    @Test
    void groupsThatShareAKindAreEntangled() {
        MemoryModule other = Samples.module("OTHER", 8).ranks(1).make();
        Level level = levels(BOARD, false, stack("S1", 1), stack("S4", 4), stack("S8", 8), other).get(0);
        assertThat(level.entangled()).singleElement().satisfies(set -> assertThat(set).extracting(GroupKind::capacityGb).containsOnly(32));
        List<GroupKind> set = level.entangled().get(0);
        assertThat(set).hasSize(3).doesNotHaveDuplicates();
        assertThat(level.holdsAny(set, Set.of("S4"))).isTrue();
        assertThat(level.holdsAny(set, Set.of("OTHER"))).isFalse();
        assertThat(level.holdsAny(set, Set.of())).isFalse();
    }

    @Test
    void groupsInTheirOrder() {
        List<GroupKind> order = List.of(new GroupKind(8, 4, 4, 7), new GroupKind(16, 1, 4, 7), new GroupKind(16, 2, 1, 7), new GroupKind(16, 2, 2, 3), new GroupKind(16, 2, 2, 7));
        assertThat(order).isSorted();
        for (int i = 1; i < order.size(); i++) {
            assertThat(order.get(i).compareTo(order.get(i - 1))).isPositive();
        }
        GroupKind group = new GroupKind(16, 2, 0, 0b101);
        assertThat(group.mayShareChannelOf(1)).isTrue();
        assertThat(group.mayShareChannelOf(2)).isFalse();
        assertThat(group.mayShareChannelOf(3)).isTrue();
    }
}
