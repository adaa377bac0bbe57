package sledwright.rules.memory;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import sledwright.domain.Build;
import sledwright.domain.Channel;
import sledwright.domain.PartKind;
import sledwright.domain.Processor;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: a socket holds no more memory than its processor addresses. */
public final class ProcessorMemoryLimit extends Rule<Machine> {

    public static final String ID = "processor-memory-limit";

    public ProcessorMemoryLimit() {
        super(ID, "The memory on a socket is within what its processor addresses.", Set.of(PartKind.MEMORY));
    }

    public static boolean allows(Processor processor, int socketGb) {
        return processor.maxMemoryGb().isEmpty() || socketGb <= processor.maxMemoryGb().getAsInt();
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Build build = machine.build();
        List<List<Channel>> sockets = build.sockets();
        List<Violation> broken = new ArrayList<>();
        for (int socket = 0; socket < Math.min(sockets.size(), build.processors().size()); socket++) {
            Processor processor = build.processors().get(socket);
            int socketGb = sockets.get(socket).stream().mapToInt(Channel::capacityGb).sum();
            if (!allows(processor, socketGb)) {
                broken.add(broken(Sockets.name(socket), "Socket %s holds %s GB; %s addresses %s GB.", socket + 1, socketGb,
                        processor.sku(), processor.maxMemoryGb().getAsInt()));
            }
        }
        return broken;
    }
}
