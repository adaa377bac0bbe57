package sledwright.domain;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What a platform takes besides processors and memory.
 *
 * @param bays    groups of drive bays, in the board's order
 * @param onboard what the board does for SATA and SAS drives by itself; empty: nothing
 */
public record Expansion(List<BayGroup> bays, Optional<DriveSupport> onboard, List<CardSlot> slots, List<Need> needs) {

    public static final Expansion NONE = new Expansion(List.of(), Optional.empty(), List.of(), List.of());

    public Expansion {
        bays = List.copyOf(bays);
        slots = List.copyOf(slots);
        needs = List.copyOf(needs);
    }

    public Optional<BayGroup> group(String name) {
        return bays.stream().filter(group -> group.name().equals(name)).findFirst();
    }

    public Optional<CardSlot> slot(String name) {
        return slots.stream().filter(slot -> slot.name().equals(name)).findFirst();
    }

    /** Whether what hangs on that socket counts; processors are fitted from the first socket on. */
    public static boolean isLive(OptionalInt socket, int processors) {
        return socket.isEmpty() || socket.getAsInt() <= processors;
    }

    /** Sku -> units of extras that a number of fitted processors and empty sockets call for. */
    public SortedMap<String, Integer> needed(int processors, int sockets) {
        SortedMap<String, Integer> units = new TreeMap<>();
        for (Need need : needs) {
            int times = need.times(processors, sockets);
            need.parts().forEach((sku, each) -> units.merge(sku, times * each, Integer::sum));
        }
        units.values().removeIf(count -> count == 0);
        return units;
    }
}
