package sledwright.metrics;

import java.util.List;
import sledwright.domain.Build;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemorySupport;

/** The memory that a mode leaves to the software, GB. */
public final class UsableMemory {

    private UsableMemory() {
    }

    /** Usable GB of a build under a mode. */
    public static double gb(Build build, MemoryMode mode) {
        double total = build.modules().values().stream().mapToInt(MemoryModule::capacityGb).sum();
        return gb(build.platform().memory(), mode, total, mode == MemoryMode.RANK_SPARING ? sparedGb(build) : 0);
    }

    /**
     * Usable GB of so much memory.
     *
     * @param sparedGb what rank sparing holds back; only read under that mode
     */
    public static double gb(MemorySupport memory, MemoryMode mode, double totalGb, double sparedGb) {
        return Quantity.rounded(switch (mode) {
            case INDEPENDENT -> totalGb;
            case MIRRORED -> totalGb * memory.modes().mirroredFraction().orElse(0);
            case RANK_SPARING -> totalGb - sparedGb;
        });
    }

    /** What one channel gives up to sparing: its largest rank. */
    public static double sparedGb(List<MemoryModule> channel) {
        return channel.stream().mapToDouble(module -> (double) module.capacityGb() / module.ranks()).max().orElse(0);
    }

    private static double sparedGb(Build build) {
        return build.channels().stream().mapToDouble(channel -> sparedGb(channel.modules())).sum();
    }
}
