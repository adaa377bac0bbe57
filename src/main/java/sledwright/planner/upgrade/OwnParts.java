package sledwright.planner.upgrade;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import sledwright.domain.Build;
import sledwright.domain.Drive;
import sledwright.domain.Fitout;
import sledwright.domain.MemoryModule;
import sledwright.domain.Part;
import sledwright.domain.Slot;
import sledwright.domain.Volume;

/**
 * Deals parts of an order over its machines again, so that each keeps as many of its own as can be.
 *
 * @param <P> modules, or drives
 */
final class OwnParts<P extends Part> {

    private final List<P> own;
    private final Function<P, Object> kin;
    private final Map<Object, SortedMap<String, Deque<P>>> pool = new HashMap<>();

    /** @param kin what may be exchanged between machines without a change in any of them */
    private OwnParts(List<List<P>> hands, List<P> own, Function<P, Object> kin) {
        this.own = own;
        this.kin = kin;
        hands.forEach(hand -> hand.forEach(part -> pool.computeIfAbsent(kin.apply(part), key -> new TreeMap<>())
                .computeIfAbsent(part.sku(), sku -> new ArrayDeque<>()).add(part)));
    }

    /** The machines in the same order, each with as many modules and drives of each kin in the same places. */
    static List<Build> dealt(List<Build> machines, Build installed) {
        if (machines.size() == 1) {
            return machines;
        }
        List<List<MemoryModule>> modules = new OwnParts<>(machines.stream().map(build -> List.copyOf(build.modules().values())).toList(),
                List.copyOf(installed.modules().values()), (MemoryModule module) ->
                List.of(module.kind(), module.logicalRanks(), module.powerW())).deal(machines.stream()
                .map(build -> List.copyOf(build.modules().values())).toList());
        List<List<Drive>> drives = new OwnParts<>(machines.stream().map(build -> build.fitout().drives()).toList(),
                installed.fitout().drives(), (Drive drive) -> List.of(drive.likeness(), drive.powerW()))
                .deal(machines.stream().map(build -> build.fitout().drives()).toList());
        List<Build> dealt = new ArrayList<>();
        for (int i = 0; i < machines.size(); i++) {
            dealt.add(with(machines.get(i), modules.get(i).iterator(), drives.get(i).iterator()));
        }
        return dealt;
    }

    private static Build with(Build build, Iterator<MemoryModule> modules, Iterator<Drive> drives) {
        SortedMap<Slot, MemoryModule> inSlots = new TreeMap<>();
        build.modules().keySet().forEach(slot -> inSlots.put(slot, modules.next()));
        List<Volume> volumes = build.fitout().volumes().stream().map(volume -> new Volume(volume.name(), volume.level(), volume.group(),
                volume.drives().stream().map(drive -> drives.next()).toList(),
                volume.hotSpares().stream().map(drive -> drives.next()).toList())).toList();
        Fitout fitout = build.fitout().with(volumes);
        return new Build(build.platform(), build.processors(), build.cooling(), build.supply(), inSlots, fitout);
    }

    private List<List<P>> deal(List<List<P>> hands) {
        List<Map<Object, Deque<P>>> kept = hands.stream().map(this::keep).toList();
        List<List<P>> dealt = new ArrayList<>();
        for (int i = 0; i < hands.size(); i++) {
            List<P> hand = new ArrayList<>();
            for (P part : hands.get(i)) {
                Deque<P> mine = kept.get(i).getOrDefault(kin.apply(part), new ArrayDeque<>());
                hand.add(mine.isEmpty() ? any(kin.apply(part)) : mine.remove());
            }
            dealt.add(hand);
        }
        return dealt;
    }

    /** The machine's own parts that it has a use for, taken out of the pool. */
    private Map<Object, Deque<P>> keep(List<P> hand) {
        Map<Object, Integer> needs = new HashMap<>();
        hand.forEach(part -> needs.merge(kin.apply(part), 1, Integer::sum));
        Map<Object, Deque<P>> kept = new HashMap<>();
        for (P part : own) {
            Object like = kin.apply(part);
            Deque<P> units = pool.getOrDefault(like, new TreeMap<>()).getOrDefault(part.sku(), new ArrayDeque<>());
            if (needs.getOrDefault(like, 0) > 0 && !units.isEmpty()) {
                needs.merge(like, -1, Integer::sum);
                kept.computeIfAbsent(like, key -> new ArrayDeque<>()).add(units.remove());
            }
        }
        return kept;
    }

    private P any(Object like) {
        return pool.get(like).values().stream().filter(units -> !units.isEmpty()).findFirst().orElseThrow().remove();
    }
}
