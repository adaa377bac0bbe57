package sledwright.rules.power;

import java.util.List;
import sledwright.domain.Platform;
import sledwright.metrics.Quantity;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: the load is within what the enclosure grants the machine. */
public final class PowerBudget extends Rule<Machine> {

    public static final String ID = "power-budget";

    public PowerBudget() {
        super(ID, "The load is within what the enclosure grants the machine.");
    }

    public static boolean allows(Platform platform, double loadW) {
        return platform.power().budgetW().isEmpty() || Quantity.within(loadW, platform.power().budgetW().getAsDouble());
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Platform platform = machine.build().platform();
        double loadW = machine.figures().loadW();
        return allows(platform, loadW) ? List.of() : List.of(broken(platform.sku(),
                "The load is %s W; the enclosure grants %s %s W.", Numbers.plain(loadW), platform.sku(),
                Numbers.plain(platform.power().budgetW().getAsDouble())));
    }
}
