package sledwright.rules.memory;

import java.util.List;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: no module sits in a slot whose socket is empty. */
public final class SlotNeedsProcessor extends Rule<Machine> {

    public static final String ID = "slot-needs-processor";

    public SlotNeedsProcessor() {
        super(ID, "No module sits in a slot whose socket is empty.");
    }

    public static boolean allows(int socket, int fittedProcessors) {
        return socket < fittedProcessors;
    }

    @Override
    public List<Violation> judge(Machine machine) {
        int fitted = machine.build().processors().size();
        return machine.build().modules().entrySet().stream().filter(entry -> !allows(entry.getKey().socket(), fitted))
                .map(entry -> broken(entry.getKey().name(), "Slot %s holds %s, but socket %s has no processor.",
                        entry.getKey().name(), entry.getValue().sku(), entry.getKey().socket() + 1))
                .toList();
    }
}
