package sledwright.rules.processor;

import java.util.List;
import sledwright.domain.PartKind;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.ProcessorSupport;
import sledwright.domain.Request;
import sledwright.rules.PartRule;
import sledwright.rules.Parts;
import sledwright.rules.Violation;

/** {@value #ID}: the processor's socket and generation are on the platform's list. */
public final class SocketMatch extends PartRule {

    public static final String ID = "socket-match";

    public SocketMatch() {
        super(ID, "The processor's socket and generation are on the platform's list.", PartKind.PLATFORMS, PartKind.PROCESSORS);
    }

    public static boolean allows(Platform platform, Processor processor) {
        return platform.processors().socket().equals(processor.socket())
                && platform.processors().generations().contains(processor.generation());
    }

    @Override
    public boolean allows(Parts parts, Request request) {
        return allows(parts.platform(), parts.processor());
    }

    @Override
    protected List<Violation> breaches(Parts parts, Request request) {
        Processor processor = parts.processor();
        ProcessorSupport takes = parts.platform().processors();
        return List.of(broken(processor.sku(), "%s is of generation %s in socket %s; %s takes %s in socket %s.",
                processor.sku(), processor.generation(), processor.socket(), parts.platform().sku(),
                String.join(", ", takes.generations().stream().sorted().toList()), takes.socket()));
    }
}
