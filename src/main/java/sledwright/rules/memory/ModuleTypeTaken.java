package sledwright.rules.memory;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import sledwright.domain.MemorySupport;
import sledwright.domain.ModuleType;
import sledwright.domain.PartKind;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: the platform's speed table has the module's type. */
public final class ModuleTypeTaken extends Rule<Machine> {

    public static final String ID = "module-type";

    public ModuleTypeTaken() {
        super(ID, "The platform takes the module's type.", Set.of(PartKind.MEMORY));
    }

    public static boolean allows(MemorySupport memory, ModuleType type) {
        return memory.takes(type);
    }

    @Override
    public List<Violation> judge(Machine machine) {
        MemorySupport memory = machine.build().platform().memory();
        String taken = memory.speeds().stream().map(entry -> entry.type().label()).distinct().collect(Collectors.joining(", "));
        return machine.build().modules().values().stream().distinct().filter(module -> !allows(memory, module.type()))
                .map(module -> broken(module.sku(), "%s is a %s; %s takes %s.", module.sku(), module.type(),
                        machine.build().platform().sku(), taken))
                .toList();
    }
}
