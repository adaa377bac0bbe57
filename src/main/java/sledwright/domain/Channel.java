package sledwright.domain;

import java.util.List;
import java.util.SortedMap;

/**
 * One memory channel of a machine, with what stands in its slots.
 *
 * @param socket  from 0
 * @param index   within the socket, from 0
 * @param filled  the module of every filled slot, first slot first
 */
public record Channel(int socket, int index, SortedMap<Slot, MemoryModule> filled) {

    /** Such as {@code 1A}. */
    public String name() {
        return Slot.channelName(socket, index);
    }

    /** The modules, first slot first. */
    public List<MemoryModule> modules() {
        return List.copyOf(filled.values());
    }

    public int capacityGb() {
        return filled.values().stream().mapToInt(MemoryModule::capacityGb).sum();
    }
}
