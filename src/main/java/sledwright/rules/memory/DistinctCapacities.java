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
import sledwright.words.Numbers;

/** {@value #ID}: a machine holds no more distinct module capacities than the platform allows. */
public final class DistinctCapacities extends Rule<Machine> {

    public static final String ID = "distinct-capacities";

    public DistinctCapacities() {
        super(ID, "No more distinct capacities stand in a machine than the platform allows.");
    }

    public static boolean allows(MemorySupport memory, int capacities) {
        return capacities <= memory.mix().maxDistinctCapacities();
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Set<Integer> capacities = machine.build().modules().values().stream().map(MemoryModule::capacityGb)
                .collect(Collectors.toCollection(TreeSet::new));
        MemorySupport memory = machine.build().platform().memory();
        return allows(memory, capacities.size()) ? List.of() : List.of(broken("",
                "The machine holds modules of %s GB; %s allows %s.",
                capacities.stream().map(String::valueOf).collect(Collectors.joining(", ")),
                machine.build().platform().sku(),
                Numbers.counted(memory.mix().maxDistinctCapacities(), "distinct capacity", "distinct capacities")));
    }
}
