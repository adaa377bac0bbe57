package sledwright.rules.memory;

import java.util.List;
import java.util.Set;
import sledwright.domain.MemorySupport;
import sledwright.domain.ModuleType;
import sledwright.domain.PartKind;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: the platform's speed table has an entry for each module at that many modules on the channel. */
public final class ModulesPerChannel extends Rule<Machine> {

    public static final String ID = "modules-per-channel";

    public ModulesPerChannel() {
        super(ID, "The platform's speed table has an entry for the module's type and ranks at that many modules per channel.",
                Set.of(PartKind.MEMORY));
    }

    public static boolean allows(MemorySupport memory, ModuleType type, int ranks, int modules) {
        return memory.speedMts(type, ranks, modules).isPresent();
    }

    @Override
    public List<Violation> judge(Machine machine) {
        MemorySupport memory = machine.build().platform().memory();
        return Sockets.populatedChannels(machine.build()).flatMap(channel -> {
            int filled = channel.filled().size();
            return channel.modules().stream().distinct()
                    .filter(module -> !allows(memory, module.type(), module.ranks(), filled))
                    .map(module -> broken(channel.name(), "Channel %s holds %s; %s has no speed for %s-rank %s at that number.",
                            channel.name(), Numbers.counted(filled, "module"), machine.build().platform().sku(), module.ranks(),
                            module.type()));
        }).distinct().toList();
    }
}
