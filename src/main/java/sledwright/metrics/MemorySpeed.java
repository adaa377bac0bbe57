package sledwright.metrics;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import sledwright.domain.Build;
import sledwright.domain.Channel;
import sledwright.domain.MemoryModule;
import sledwright.domain.Processor;

/**
 * The one speed at which a machine runs its memory: the lowest of the processor's limit, every module's rating and the
 * platform's figure for each populated channel.
 *
 * @param mts   MT/s; 0 without a processor or module
 * @param setBy what holds it there
 */
public record MemorySpeed(int mts, SetBy setBy) {

    /** What holds the memory at its speed; where several do, the first of these. */
    public enum SetBy {
        PROCESSOR, MODULE, MODULES_PER_CHANNEL;

        public String label() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /** The speed of a build; what the platform's table does not list is left to the rules. */
    public static MemorySpeed of(Build build) {
        if (build.processors().isEmpty() || build.modules().isEmpty()) {
            return new MemorySpeed(0, SetBy.PROCESSOR);
        }
        int processor = build.processors().stream().mapToInt(Processor::memoryMts).min().orElseThrow();
        int module = build.modules().values().stream().mapToInt(MemoryModule::speedMts).min().orElseThrow();
        int table = tableMts(build);
        int mts = Math.min(processor, Math.min(module, table));
        SetBy setBy = mts == processor ? SetBy.PROCESSOR : mts == module ? SetBy.MODULE : SetBy.MODULES_PER_CHANNEL;
        return new MemorySpeed(mts, setBy);
    }

    /** Of several machines the one that runs its memory slowest; of equals the first. */
    public static Build slowest(List<Build> machines) {
        return machines.stream().min(Comparator.comparingInt(machine -> of(machine).mts())).orElseThrow();
    }

    private static int tableMts(Build build) {
        int lowest = Integer.MAX_VALUE;
        for (Channel channel : build.channels()) {
            int filled = channel.filled().size();
            for (MemoryModule module : channel.filled().values()) {
                int entry = build.platform().memory().speedMts(module.type(), module.ranks(), filled).orElse(Integer.MAX_VALUE);
                lowest = Math.min(lowest, entry);
            }
        }
        return lowest;
    }
}
