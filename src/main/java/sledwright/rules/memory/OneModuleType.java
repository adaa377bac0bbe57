package sledwright.rules.memory;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: a machine holds one type of module. */
public final class OneModuleType extends Rule<Machine> {

    public static final String ID = "one-module-type";

    public OneModuleType() {
        super(ID, "One type of module stands in a machine.");
    }

    public static boolean allows(Set<ModuleType> types) {
        return types.size() <= 1;
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Set<ModuleType> types = machine.build().modules().values().stream().map(MemoryModule::type)
                .collect(Collectors.toCollection(TreeSet::new));
        return allows(types) ? List.of() : List.of(broken("", "Modules of several types stand in one machine: %s.",
                types.stream().map(ModuleType::label).collect(Collectors.joining(", "))));
    }
}
