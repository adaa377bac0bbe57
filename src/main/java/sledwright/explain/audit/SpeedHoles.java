package sledwright.explain.audit;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import sledwright.domain.Catalog;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemorySupport;
import sledwright.domain.ModuleType;
import sledwright.domain.Platform;
import sledwright.domain.SpeedEntry;
import sledwright.rules.memory.MemoryGeneration;
import sledwright.rules.memory.ModuleTypeTaken;
import sledwright.rules.memory.ModulesPerChannel;

/**
 * A speed table that takes a type but has no row for ranks which modules of that type in the catalogue carry, or that grows faster
 * with more modules on the channel.
 */
final class SpeedHoles implements PlatformCheck {

    @Override
    public List<String> messages(Platform platform, Catalog catalog) {
        List<String> messages = new ArrayList<>();
        MemorySupport memory = platform.memory();
        for (ModuleType type : ModuleType.values()) {
            Set<Integer> missing = catalog.modules().stream().filter(module -> module.type() == type)
                    .filter(module -> MemoryGeneration.allows(memory, module) && ModuleTypeTaken.allows(memory, type))
                    .map(MemoryModule::ranks).filter(ranks -> !ModulesPerChannel.allows(memory, type, ranks, 1))
                    .collect(Collectors.toCollection(TreeSet::new));
            if (!missing.isEmpty()) {
                messages.add("the speed table of %s has no row for %s with %s %s, which modules of the catalogue carry.".formatted(
                        platform.sku(), type.label(), missing.stream().map(String::valueOf).collect(Collectors.joining(" or ")),
                        missing.equals(Set.of(1)) ? "rank" : "ranks"));
            }
        }
        memory.speeds().stream().filter(SpeedHoles::rises)
                .forEach(entry -> messages.add("the speed table of %s has %s faster with more modules on the channel: %s."
                        .formatted(platform.sku(), entry.type().label(),
                                entry.mts().stream().map(String::valueOf).collect(Collectors.joining(", ")))));
        return messages;
    }

    private static boolean rises(SpeedEntry entry) {
        return IntStream.range(1, entry.mts().size()).anyMatch(more -> entry.mts().get(more) > entry.mts().get(more - 1));
    }
}
