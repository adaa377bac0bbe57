package sledwright.rules.processor;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

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
            broken.add(broken(platform.sku(), "%d processors are fitted; %s runs with %s.", fitted, platform.sku(),
                    platform.processors().counts().stream().map(String::valueOf).collect(Collectors.joining(" or "))));
        }
        machine.build().processors().stream().distinct().filter(processor -> !allows(processor, fitted))
                .map(processor -> broken(processor.sku(), "%d processors are fitted; %s works with at most %d in one machine.",
                        fitted, processor.sku(), processor.socketsMax()))
                .forEach(broken::add);
        return broken;
    }
}
