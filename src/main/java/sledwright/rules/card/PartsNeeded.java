package sledwright.rules.card;

import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import sledwright.domain.Build;
import sledwright.domain.Equipment;
import sledwright.domain.Platform;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: what fitted processors and empty sockets call for is bought, and the extras that the request asks for. */
public final class PartsNeeded extends Rule<Machine> {

    public static final String ID = "needs";

    /** The key of a request that it holds a build to. */
    public static final String KEY = "extras";

    public PartsNeeded() {
        super(ID, "What the fitted processors and empty sockets call for is bought, besides the extras that the request asks for.", KEY);
    }

    /** Sku -> units of extras that are called for by a number of fitted processors, and asked for; risers are not among them. */
    public static SortedMap<String, Integer> called(Platform platform, int processors, Equipment asked) {
        SortedMap<String, Integer> units = new TreeMap<>(platform.expansion().needed(processors, platform.processors().sockets()));
        asked.extras().forEach((sku, each) -> units.merge(sku, each, Integer::sum));
        return units;
    }

    static SortedMap<String, Integer> called(Machine machine) {
        Build build = machine.build();
        return called(build.platform(), build.processors().size(), machine.request().equipment());
    }

    @Override
    public List<Violation> judge(Machine machine) {
        return called(machine).entrySet().stream().filter(called -> machine.build().fitout().units(called.getKey()) < called.getValue())
                .map(called -> broken(called.getKey(), "With %3$s, %1$s of %2$s called for; the machine has %4$d.",
                        Numbers.counted(called.getValue(), "unit"), called.getKey() + (called.getValue() == 1 ? " is" : " are"),
                        Numbers.counted(machine.build().processors().size(), "processor"), machine.build().fitout()
                        .units(called.getKey()))).toList();
    }
}
