package sledwright.rules.memory;

import java.util.List;
import java.util.Set;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemorySupport;
import sledwright.domain.PartKind;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: every module is of the platform's memory generation. */
public final class MemoryGeneration extends Rule<Machine> {

    public static final String ID = "memory-generation";

    public MemoryGeneration() {
        super(ID, "Every module is of the platform's memory generation.", Set.of(PartKind.MEMORY));
    }

    public static boolean allows(MemorySupport memory, MemoryModule module) {
        return memory.generation().equals(module.generation());
    }

    @Override
    public List<Violation> judge(Machine machine) {
        MemorySupport memory = machine.build().platform().memory();
        return machine.build().modules().values().stream().distinct().filter(module -> !allows(memory, module))
                .map(module -> broken(module.sku(), "%s is %s; %s takes %s.", module.sku(), module.generation(),
                        machine.build().platform().sku(), memory.generation()))
                .toList();
    }
}
