package sledwright.rules.target;

import java.util.List;
import sledwright.domain.Limits;
import sledwright.metrics.Quantity;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: the load of a machine is within the request's limit. */
public final class PowerLimit extends Rule<Machine> {

    public static final String ID = "power-limit";

    public PowerLimit() {
        super(ID, "The load of a machine is within the request's limit.", "limit.power_w");
    }

    public static boolean allows(Limits limits, double loadW) {
        return Quantity.within(loadW, mostW(limits));
    }

    /** The most that a machine may load, watts; infinite where nothing limits it. */
    public static double mostW(Limits limits) {
        return limits.powerW().orElse(Double.POSITIVE_INFINITY);
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Limits limits = machine.request().limit();
        double loadW = machine.figures().loadW();
        return allows(limits, loadW) ? List.of() : List.of(broken("", "The load is %s W; the request allows %s W.",
                Numbers.plain(loadW), Numbers.plain(mostW(limits))));
    }
}
