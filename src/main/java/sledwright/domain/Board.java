package sledwright.domain;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The memory slots of a board, socket by socket, channel by channel. */
public final class Board {

    private final int sockets;
    private final int channels;
    private final int slotsPerChannel;
    private final String fillSide;
    private final List<Slot> slots;
    private final Map<String, Slot> byName = new HashMap<>();

    /**
     * @param fillSide words for the bench: which slot of a channel is its first; may be empty
     * @param names    the board's own slot names in board order; empty: {@code 1A1, 1A2 ...}
     * @throws IllegalArgumentException when there are names but not one for each slot, or two are the same
     */
    public Board(int sockets, int channels, int slotsPerChannel, String fillSide, List<String> names) {
        int size = sockets * channels * slotsPerChannel;
        if (!names.isEmpty() && names.size() != size) {
            throw new IllegalArgumentException("%s slot names for %s slots".formatted(names.size(), size));
        }
        this.sockets = sockets;
        this.channels = channels;
        this.slotsPerChannel = slotsPerChannel;
        this.fillSide = fillSide;
        List<Slot> all = new ArrayList<>(size);
        for (int socket = 0; socket < sockets; socket++) {
            for (int channel = 0; channel < channels; channel++) {
                for (int position = 0; position < slotsPerChannel; position++) {
                    String name = names.isEmpty()
                            ? Slot.channelName(socket, channel) + (position + 1)
                            : names.get(all.size());
                    Slot slot = new Slot(name, socket, channel, position);
                    if (byName.put(name, slot) != null) {
                        throw new IllegalArgumentException("two slots are called " + name);
                    }
                    all.add(slot);
                }
            }
        }
        slots = List.copyOf(all);
    }

    public int sockets() {
        return sockets;
    }

    /** Channels of one socket. */
    public int channels() {
        return channels;
    }

    public int slotsPerChannel() {
        return slotsPerChannel;
    }

    /** Words for the bench: which slot of a channel is its first; may be empty. */
    public String fillSide() {
        return fillSide;
    }

    /** All slots in board order. */
    public List<Slot> slots() {
        return slots;
    }

    /** The slot of that name. */
    public Optional<Slot> slot(String name) {
        return Optional.ofNullable(byName.get(name));
    }

    /** The slot at a place, each from 0. */
    public Slot slot(int socket, int channel, int position) {
        return slots.get((socket * channels + channel) * slotsPerChannel + position);
    }
}
