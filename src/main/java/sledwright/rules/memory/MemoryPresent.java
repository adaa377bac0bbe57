package sledwright.rules.memory;

import java.util.List;
import java.util.stream.IntStream;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: every fitted socket has a module. */
public final class MemoryPresent extends Rule<Machine> {

    public static final String ID = "memory-present";

    public MemoryPresent() {
        super(ID, "Every fitted socket has at least one module.");
    }

    public static boolean allows(int modulesOnSocket) {
        return modulesOnSocket > 0;
    }

    @Override
    public List<Violation> judge(Machine machine) {
        int fitted = Math.min(machine.build().processors().size(), machine.build().platform().board().sockets());
        return IntStream.range(0, fitted).filter(socket -> !allows(Sockets.modules(machine.build(), socket)))
                .mapToObj(socket -> broken(Sockets.name(socket), "Socket %s has a processor and no module.", socket + 1))
                .toList();
    }
}
