package sledwright.domain;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * What a platform's memory slots take, per socket.
 *
 * @param channels        channels of one socket
 * @param maxLogicalRanks most logical ranks on a channel, by module type; a type without a figure has no limit
 */
public record MemorySupport(String generation, int channels, int slotsPerChannel,
                            Map<ModuleType, Integer> maxLogicalRanks, List<SpeedEntry> speeds, ModuleMix mix, MemoryModes modes) {

    public MemorySupport {
        maxLogicalRanks = Map.copyOf(maxLogicalRanks);
        // A row that names its ranks takes precedence over a row that serves every count.
        speeds = speeds.stream().sorted(Comparator.comparing(entry -> entry.ranks().isEmpty())).toList();
    }

    /**
     * The table's speed (MT/s) for a module of that type and physical ranks where a channel holds {@code modules}; empty: not supported.
     */
    public OptionalInt speedMts(ModuleType type, int ranks, int modules) {
        for (SpeedEntry entry : speeds) {
            if (entry.type() == type && (entry.ranks().isEmpty() || entry.ranks().contains(ranks))) {
                return modules <= entry.mts().size() ? OptionalInt.of(entry.mts().get(modules - 1)) : OptionalInt.empty();
            }
        }
        return OptionalInt.empty();
    }

    /** Whether the table has any row for the type. */
    public boolean takes(ModuleType type) {
        return speeds.stream().anyMatch(entry -> entry.type() == type);
    }

    /** The most logical ranks that a channel of this type carries. */
    public int rankLimit(ModuleType type) {
        return maxLogicalRanks.getOrDefault(type, Integer.MAX_VALUE);
    }
}
