package sledwright.rules.card;

import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeSet;
import sledwright.domain.Build;
import sledwright.domain.CardSlot;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: the riser of every slot that is used is bought, besides what is called for otherwise. */
public final class RiserBought extends Rule<Machine> {

    public static final String ID = "riser";

    public RiserBought() {
        super(ID, "The riser of every slot that is used is bought, once for all slots that name it.");
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Build build = machine.build();
        SortedMap<String, Integer> called = PartsNeeded.called(machine);
        return risers(build).stream().filter(sku -> build.fitout().units(sku) < called.getOrDefault(sku, 0) + 1)
                .map(sku -> broken(sku, "A used slot needs the riser %s: %s called for, %s in the machine.", sku,
                        Numbers.counted(called.getOrDefault(sku, 0) + 1, "unit is", "units are"), build.fitout().units(sku))).toList();
    }

    private static SortedSet<String> risers(Build build) {
        SortedSet<String> risers = new TreeSet<>();
        build.fitout().cards().keySet()
                .forEach(slot -> build.platform().expansion().slot(slot).flatMap(CardSlot::riser).ifPresent(risers::add));
        return risers;
    }
}
