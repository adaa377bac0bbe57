package sledwright.rules.memory;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sledwright.domain.Board;
import sledwright.domain.Build;
import sledwright.domain.MemoryModule;
import sledwright.domain.Slot;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: every slot of a fitted socket holds a module alike to the one in the same place of the first socket. */
public final class MatchedSockets extends Rule<Machine> {

    public static final String ID = "matched-sockets";

    public MatchedSockets() {
        super(ID, "The fitted sockets are populated alike, slot by slot.");
    }

    public static boolean allows(Optional<MemoryModule> one, Optional<MemoryModule> other) {
        return one.map(MemoryModule::kind).equals(other.map(MemoryModule::kind));
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Build build = machine.build();
        Board board = build.platform().board();
        List<Violation> broken = new ArrayList<>();
        for (Slot slot : board.slots()) {
            if (slot.socket() > 0 && Sockets.fitted(build, slot.socket())) {
                Slot first = board.slot(0, slot.channel(), slot.position());
                Optional<MemoryModule> here = Optional.ofNullable(build.modules().get(slot));
                Optional<MemoryModule> there = Optional.ofNullable(build.modules().get(first));
                if (!allows(there, here)) {
                    broken.add(broken(slot.name(), "Slot %s holds %s while slot %s of the first socket holds %s.",
                            slot.name(), words(here), first.name(), words(there)));
                }
            }
        }
        return broken;
    }

    private static String words(Optional<MemoryModule> module) {
        return module.map(present -> present.kind().toString()).orElse("nothing");
    }
}
