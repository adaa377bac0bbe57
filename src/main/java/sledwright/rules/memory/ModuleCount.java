package sledwright.rules.memory;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import sledwright.domain.MemorySupport;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: where the platform lists the module counts of a socket, the count is one of them. */
public final class ModuleCount extends Rule<Machine> {

    public static final String ID = "module-count";

    public ModuleCount() {
        super(ID, "The number of modules on a socket is one that the platform supports.");
    }

    public static boolean allows(MemorySupport memory, int modulesOnSocket) {
        return allows(memory.mix().countsPerSocket(), modulesOnSocket);
    }

    /** @param supported the counts that a platform lists; empty: any */
    public static boolean allows(Set<Integer> supported, int modulesOnSocket) {
        return supported.isEmpty() || supported.contains(modulesOnSocket);
    }

    @Override
    public List<Violation> judge(Machine machine) {
        MemorySupport memory = machine.build().platform().memory();
        return IntStream.range(0, machine.build().platform().board().sockets())
                .filter(socket -> Sockets.modules(machine.build(), socket) > 0)
                .filter(socket -> !allows(memory, Sockets.modules(machine.build(), socket)))
                .mapToObj(socket -> broken(Sockets.name(socket), "Socket %s holds %s; %s supports %s.", socket + 1,
                        Numbers.counted(Sockets.modules(machine.build(), socket), "module"), machine.build().platform().sku(),
                        memory.mix().countsPerSocket().stream().sorted().map(String::valueOf).collect(Collectors.joining(", "))))
                .toList();
    }
}
