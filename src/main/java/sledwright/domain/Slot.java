package sledwright.domain;

import java.util.Comparator;

/**
 * A memory slot of a board.
 *
 * @param name     the board's own name for it
 * @param socket   its socket, from 0
 * @param channel  its channel within the socket, from 0
 * @param position its place within the channel, from 0, in the order in which the channel is filled
 */
public record Slot(String name, int socket, int channel, int position) implements Comparable<Slot> {

    private static final Comparator<Slot> BOARD_ORDER =
            Comparator.comparingInt(Slot::socket).thenComparingInt(Slot::channel).thenComparingInt(Slot::position);

    /**
     * Socket by socket, the first slots of all channels before the second ones: whoever fills slots in this order keeps the order of
     * slots and of channels at every step.
     */
    public static final Comparator<Slot> FILLING_ORDER =
            Comparator.comparingInt(Slot::socket).thenComparingInt(Slot::position).thenComparingInt(Slot::channel);

    @Override
    public int compareTo(Slot other) {
        return BOARD_ORDER.compare(this, other);
    }

    /** What the trade calls a channel: the socket from 1 and a letter, such as {@code 2F}; socket and channel from 0. */
    public static String channelName(int socket, int channel) {
        return (socket + 1) + "" + (char) ('A' + channel);
    }
}
