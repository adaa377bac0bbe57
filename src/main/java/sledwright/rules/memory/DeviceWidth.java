package sledwright.rules.memory;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemorySupport;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: x4 and x8 modules are not mixed where the platform forbids it. */
public final class DeviceWidth extends Rule<Machine> {

    public static final String ID = "device-width";

    public DeviceWidth() {
        super(ID, "Modules of one device width stand in a machine whose platform forbids mixing them.");
    }

    public static boolean allows(MemorySupport memory, Set<Integer> widths) {
        return memory.mix().widths() || widths.size() <= 1;
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Set<Integer> widths = machine.build().modules().values().stream().map(MemoryModule::deviceWidth)
                .collect(Collectors.toCollection(TreeSet::new));
        return allows(machine.build().platform().memory(), widths) ? List.of() : List.of(broken("",
                "%s does not mix device widths; the machine holds %s.", machine.build().platform().sku(),
                widths.stream().map(width -> "x" + width).collect(Collectors.joining(" and "))));
    }
}
