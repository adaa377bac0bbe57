package sledwright.rules.processor;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: the platform runs with that many processors, and so does the processor. */
public final class SocketCount extends Rule<Machine> {

    public static final String ID = "socket-count";

    public SocketCount() {
        super(ID, "The number of fitted processors is one that the platform allows and no more than the processor allows.");
    }

    public static boolean allows(Platform platform, int fitted) {
        return platform.processors().counts().contains(fitted);
    }

    public static boolean allows(Processor processor, int fitted) {
        return fitted <= processor.socketsMax();
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Platform platform = machine.build().platform();
        int fitted = machine.build().processors().size();
        List<Violation> broken = new ArrayList<>();
        if (!allows(platform, fitted)) {
            broken.add(broken(platform.sku(), "The machine has %s; %s runs with %s.",
                    Numbers.counted(fitted, "processor"), platform.sku(), platform.processors().counts().stream()
                    .map(String::valueOf).collect(Collectors.joining(" or "))));
        }
        machine.build().processors().stream().distinct().filter(processor -> !allows(processor, fitted))
                .map(processor -> broken(processor.sku(), "The machine has %s; at most %d of %s work together.",
                        Numbers.counted(fitted, "processor"), processor.socketsMax(), processor.sku()))
                .forEach(broken::add);
        return broken;
    }
}
