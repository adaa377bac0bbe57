package sledwright.rules.processor;

import java.util.List;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.ProcessorSupport;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: the processor's socket and generation are on the platform's list. */
public final class SocketMatch extends Rule<Machine> {

    public static final String ID = "socket-match";

    public SocketMatch() {
        super(ID, "The processor's socket and generation are on the platform's list.");
    }

    public static boolean allows(Platform platform, Processor processor) {
        return platform.processors().socket().equals(processor.socket())
                && platform.processors().generations().contains(processor.generation());
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Platform platform = machine.build().platform();
        ProcessorSupport takes = platform.processors();
        return machine.build().processors().stream().distinct().filter(processor -> !allows(platform, processor))
                .map(processor -> broken(processor.sku(), "%s is of generation %s in socket %s; %s takes %s in socket %s.",
                        processor.sku(), processor.generation(), processor.socket(), platform.sku(),
                        String.join(", ", takes.generations().stream().sorted().toList()), takes.socket()))
                .toList();
    }
}
