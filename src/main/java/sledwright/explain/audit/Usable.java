package sledwright.explain.audit;

import sledwright.domain.Catalog;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemorySupport;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.rules.cooling.HeatSinkRating;
import sledwright.rules.memory.MemoryGeneration;
import sledwright.rules.memory.ModulesPerChannel;
import sledwright.rules.memory.RankLimit;
import sledwright.rules.processor.SocketCount;
import sledwright.rules.processor.SocketMatch;
import sledwright.rules.processor.TdpLimit;

/** Whether a part fits any platform by itself; what else a machine holds is not asked. */
final class Usable {

    private Usable() {
    }

    static boolean anywhere(Processor processor, Catalog catalog) {
        return catalog.platforms().stream().anyMatch(platform -> fits(processor, platform));
    }

    static boolean anywhere(MemoryModule module, Catalog catalog) {
        return catalog.platforms().stream().map(Platform::memory).anyMatch(memory -> fits(module, memory));
    }

    private static boolean fits(Processor processor, Platform platform) {
        return SocketMatch.allows(platform, processor) && TdpLimit.allows(platform, processor)
                && platform.processors().counts().stream().anyMatch(count -> SocketCount.allows(processor, count))
                && platform.cooling().stream().anyMatch(kit -> HeatSinkRating.allows(kit, processor));
    }

    private static boolean fits(MemoryModule module, MemorySupport memory) {
        return MemoryGeneration.allows(memory, module) && ModulesPerChannel.allows(memory, module.type(), module.ranks(), 1)
                && RankLimit.allows(memory, module.type(), module.logicalRanks());
    }
}
