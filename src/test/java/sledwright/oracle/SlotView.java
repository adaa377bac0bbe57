package sledwright.oracle;

import java.util.ArrayList;
import java.util.List;
import sledwright.domain.Build;
import sledwright.domain.CoolingKit;
import sledwright.domain.MemoryModule;
import sledwright.domain.Platform;
import sledwright.domain.Slot;

/** A board as arrays: sockets of channels of slots in fill order, an empty slot being null. */
final class SlotView {

    private SlotView() {
    }

    /** Whether every slot of two sockets holds the same type, capacity, ranks and device width, or nothing. */
    static boolean alike(MemoryModule[][] one, MemoryModule[][] other) {
        for (int c = 0; c < one.length; c++) {
            for (int i = 0; i < one[c].length; i++) {
                if (!alike(one[c][i], other[c][i])) {
                    return false;
                }
            }
        }
        return true;
    }

    static boolean alike(MemoryModule one, MemoryModule other) {
        if (one == null || other == null) {
            return one == other;
        }
        return one.type() == other.type() && one.capacityGb() == other.capacityGb() && one.ranks() == other.ranks()
                && one.deviceWidth() == other.deviceWidth();
    }

    /** The slots that a kit covers, by socket, channel and place. */
    static boolean[][][] covered(Platform platform, CoolingKit kit) {
        boolean[][][] covered = new boolean[platform.board().sockets()][platform.board().channels()][platform.board().slotsPerChannel()];
        for (Slot slot : platform.board().slots()) {
            covered[slot.socket()][slot.channel()][slot.position()] = kit.covers().contains(slot.name());
        }
        return covered;
    }

    /** The modules of a build by socket, channel and place. */
    static MemoryModule[][][] memory(Build build) {
        var board = build.platform().board();
        MemoryModule[][][] memory = new MemoryModule[board.sockets()][board.channels()][board.slotsPerChannel()];
        build.modules().forEach((slot, module) -> memory[slot.socket()][slot.channel()][slot.position()] = module);
        return memory;
    }

    static int count(MemoryModule[]... channels) {
        int count = 0;
        for (MemoryModule[] channel : channels) {
            for (MemoryModule module : channel) {
                count += module == null ? 0 : 1;
            }
        }
        return count;
    }

    static int gb(MemoryModule[]... channels) {
        return modules(channels).stream().mapToInt(MemoryModule::capacityGb).sum();
    }

    static List<MemoryModule> modules(MemoryModule[]... channels) {
        List<MemoryModule> modules = new ArrayList<>();
        for (MemoryModule[] channel : channels) {
            for (MemoryModule module : channel) {
                if (module != null) {
                    modules.add(module);
                }
            }
        }
        return modules;
    }
}
