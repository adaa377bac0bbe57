package sledwright.planner.upgrade;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import sledwright.domain.Build;
import sledwright.domain.MemoryModule;
import sledwright.domain.Slot;

/** Deals the modules of an order over its machines again, so that each keeps as many of its own as can be. */
final class OwnModules {

    /** What may be exchanged between machines without a change in any of them. */
    private record Kin(MemoryModule.Kind kind, int logicalRanks, double powerW) {

        static Kin of(MemoryModule module) {
            return new Kin(module.kind(), module.logicalRanks(), module.powerW());
        }
    }

    private final List<Build> machines;
    private final List<MemoryModule> own;
    private final Map<Kin, SortedMap<String, Deque<MemoryModule>>> pool = new HashMap<>();

    private OwnModules(List<Build> machines, Build installed) {
        this.machines = machines;
        own = List.copyOf(installed.modules().values());
        machines.forEach(build -> build.modules().values().forEach(module -> pool.computeIfAbsent(Kin.of(module), kin -> new TreeMap<>())
                .computeIfAbsent(module.sku(), sku -> new ArrayDeque<>()).add(module)));
    }

    /** The machines in the same order, each with as many modules of each kin in the same slots. */
    static List<Build> dealt(List<Build> machines, Build installed) {
        return machines.size() == 1 ? machines : new OwnModules(machines, installed).deal();
    }

    private List<Build> deal() {
        List<Map<Kin, Deque<MemoryModule>>> hands = machines.stream().map(this::keep).toList();
        List<Build> dealt = new ArrayList<>();
        for (int i = 0; i < machines.size(); i++) {
            Build build = machines.get(i);
            Map<Kin, Deque<MemoryModule>> hand = hands.get(i);
            SortedMap<Slot, MemoryModule> modules = new TreeMap<>();
            build.modules().forEach((slot, module) -> {
                Deque<MemoryModule> kept = hand.getOrDefault(Kin.of(module), new ArrayDeque<>());
                modules.put(slot, kept.isEmpty() ? any(Kin.of(module)) : kept.remove());
            });
            dealt.add(new Build(build.platform(), build.processors(), build.cooling(), build.supply(), modules, build.fitout()));
        }
        return dealt;
    }

    /** The machine's own modules that it has a use for, taken out of the pool. */
    private Map<Kin, Deque<MemoryModule>> keep(Build build) {
        Map<Kin, Integer> needs = new HashMap<>();
        build.modules().values().forEach(module -> needs.merge(Kin.of(module), 1, Integer::sum));
        Map<Kin, Deque<MemoryModule>> kept = new HashMap<>();
        for (MemoryModule module : own) {
            Kin kin = Kin.of(module);
            Deque<MemoryModule> units = pool.getOrDefault(kin, new TreeMap<>()).getOrDefault(module.sku(), new ArrayDeque<>());
            if (needs.getOrDefault(kin, 0) > 0 && !units.isEmpty()) {
                needs.merge(kin, -1, Integer::sum);
                kept.computeIfAbsent(kin, key -> new ArrayDeque<>()).add(units.remove());
            }
        }
        return kept;
    }

    private MemoryModule any(Kin kin) {
        return pool.get(kin).values().stream().filter(units -> !units.isEmpty()).findFirst().orElseThrow().remove();
    }
}
