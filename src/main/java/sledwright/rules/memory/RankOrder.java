package sledwright.rules.memory;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import sledwright.domain.MemoryModule;
import sledwright.domain.Slot;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: within a channel ranks do not rise, nor, at equal ranks, does capacity. */
public final class RankOrder extends Rule<Machine> {

    public static final String ID = "rank-order";

    /** The order in which a channel takes its modules. */
    public static final Comparator<MemoryModule.Kind> FILL_ORDER =
            Comparator.comparingInt(MemoryModule.Kind::ranks).thenComparingInt(MemoryModule.Kind::capacityGb).reversed();

    public RankOrder() {
        super(ID, "Within a channel no module has more ranks than the one before it or, at equal ranks, more capacity.");
    }

    public static boolean allows(MemoryModule before, MemoryModule after) {
        return FILL_ORDER.compare(before.kind(), after.kind()) <= 0;
    }

    @Override
    public List<Violation> judge(Machine machine) {
        return Sockets.populatedChannels(machine.build()).flatMap(channel -> {
            List<Map.Entry<Slot, MemoryModule>> filled = List.copyOf(channel.filled().entrySet());
            List<Violation> broken = new ArrayList<>();
            for (int i = 1; i < filled.size(); i++) {
                MemoryModule before = filled.get(i - 1).getValue();
                MemoryModule after = filled.get(i).getValue();
                if (!allows(before, after)) {
                    broken.add(broken(filled.get(i).getKey().name(),
                            "Slot %s holds a module of %s GB with %s behind one of %s GB with %s.",
                            filled.get(i).getKey().name(), after.capacityGb(), Numbers.counted(after.ranks(), "rank"),
                            before.capacityGb(), before.ranks()));
                }
            }
            return broken.stream();
        }).toList();
    }
}
