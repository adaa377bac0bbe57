package sledwright.rules.processor;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import sledwright.domain.PartKind;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.rules.Machine;
import sledwright.rules.PartRule;
import sledwright.rules.Parts;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: the platform runs with that many processors, and so does the processor. */
public final class SocketCount extends PartRule {

    public static final String ID = "socket-count";

    public SocketCount() {
        super(ID, "The number of fitted processors is one that the platform allows and no more than the processor allows.",
                PartKind.PLATFORMS, PartKind.PROCESSORS);
    }

    public static boolean allows(Platform platform, int fitted) {
        return platform.processors().counts().contains(fitted);
    }

    public static boolean allows(Processor processor, int fitted) {
        return fitted <= processor.socketsMax();
    }

    @Override
    public boolean allows(Parts parts, Request request) {
        return allows(parts.platform(), parts.fitted()) && allows(parts.processor(), parts.fitted());
    }

    /** A machine without processors has no part that could be judged, but a number. */
    @Override
    public List<Violation> judge(Machine machine) {
        Platform platform = machine.build().platform();
        return machine.build().processors().isEmpty() && !allows(platform, 0) ? List.of(ofPlatform(platform, 0)) : super.judge(machine);
    }

    private Violation ofPlatform(Platform platform, int fitted) {
        return broken(platform.sku(), "The machine has %s; %s runs with %s.", Numbers.counted(fitted, "processor"), platform.sku(),
                platform.processors().counts().stream().map(String::valueOf).collect(Collectors.joining(" or ")));
    }

    @Override
    protected List<Violation> breaches(Parts parts, Request request) {
        Platform platform = parts.platform();
        String fitted = Numbers.counted(parts.fitted(), "processor");
        List<Violation> broken = new ArrayList<>();
        if (!allows(platform, parts.fitted())) {
            broken.add(ofPlatform(platform, parts.fitted()));
        }
        if (!allows(parts.processor(), parts.fitted())) {
            int most = parts.processor().socketsMax();
            broken.add(broken(parts.processor().sku(), "The machine has %s; %s works %s.", fitted, parts.processor().sku(),
                    most == 1 ? "with no other" : "with at most %s".formatted(Numbers.counted(most - 1, "other"))));
        }
        return broken;
    }
}
