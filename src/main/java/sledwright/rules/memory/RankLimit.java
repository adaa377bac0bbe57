package sledwright.rules.memory;

import java.util.List;
import java.util.Set;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemorySupport;
import sledwright.domain.ModuleType;
import sledwright.domain.PartKind;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: a channel carries no more logical ranks than the platform allows for the module type. */
public final class RankLimit extends Rule<Machine> {

    public static final String ID = "rank-limit";

    public RankLimit() {
        super(ID, "The logical ranks on a channel are within the platform's limit for the module type.", Set.of(PartKind.MEMORY));
    }

    public static boolean allows(MemorySupport memory, ModuleType type, int logicalRanks) {
        return allows(memory.rankLimit(type), logicalRanks);
    }

    public static boolean allows(int limit, int logicalRanks) {
        return logicalRanks <= limit;
    }

    @Override
    public List<Violation> judge(Machine machine) {
        MemorySupport memory = machine.build().platform().memory();
        return Sockets.populatedChannels(machine.build()).flatMap(channel -> {
            int ranks = channel.modules().stream().mapToInt(MemoryModule::logicalRanks).sum();
            return channel.modules().stream().map(MemoryModule::type).distinct().filter(type -> !allows(memory, type, ranks))
                    .map(type -> broken(channel.name(), "Channel %s carries %s logical ranks; the limit for %s is %s.",
                            channel.name(), ranks, type, memory.rankLimit(type)));
        }).toList();
    }
}
