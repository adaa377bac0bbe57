package sledwright.rules.cooling;

import java.util.List;
import java.util.Set;
import sledwright.domain.CoolingKit;
import sledwright.domain.Platform;
import sledwright.domain.Slot;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: no module sits in a slot that the cooling kit covers. */
public final class BlockedSlot extends Rule<Machine> {

    public static final String ID = "blocked-slot";

    public BlockedSlot() {
        super(ID, "No module sits in a slot that the cooling kit covers.");
    }

    public static boolean allows(Set<Slot> covered, Slot slot) {
        return !covered.contains(slot);
    }

    /** How many modules a channel takes from its first slot on until a covered slot ends it. */
    public static int depth(Platform platform, CoolingKit kit, int socket, int channel) {
        Set<Slot> covered = platform.covered(kit);
        int depth = 0;
        while (depth < platform.board().slotsPerChannel() && allows(covered, platform.board().slot(socket, channel, depth))) {
            depth++;
        }
        return depth;
    }

    @Override
    public List<Violation> judge(Machine machine) {
        CoolingKit kit = machine.build().cooling();
        Set<Slot> covered = machine.build().platform().covered(kit);
        return machine.build().modules().entrySet().stream().filter(entry -> !allows(covered, entry.getKey()))
                .map(entry -> broken(entry.getKey().name(), "%s covers slot %s, which holds %s.", kit.sku(),
                        entry.getKey().name(), entry.getValue().sku()))
                .toList();
    }
}
