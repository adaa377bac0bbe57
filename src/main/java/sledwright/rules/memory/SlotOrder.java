package sledwright.rules.memory;

import java.util.List;
import sledwright.domain.Board;
import sledwright.domain.Channel;
import sledwright.domain.Slot;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: a channel is filled from its first slot on. */
public final class SlotOrder extends Rule<Machine> {

    public static final String ID = "slot-order";

    public SlotOrder() {
        super(ID, "Within a channel the first slot is filled first, then the second, then the third.");
    }

    /** Whether a module may stand at a position while a given number of earlier slots of the channel is filled. */
    public static boolean allows(int position, int filledBefore) {
        return position == filledBefore;
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Board board = machine.build().platform().board();
        return Sockets.populatedChannels(machine.build()).flatMap(channel -> {
            List<Slot> filled = List.copyOf(channel.filled().keySet());
            return filled.stream().filter(slot -> !allows(slot.position(), filled.indexOf(slot)))
                    .map(slot -> broken(slot.name(), "Slot %s is filled while slot %s of the same channel is empty.", slot.name(),
                            firstEmpty(board, channel).name()));
        }).toList();
    }

    private static Slot firstEmpty(Board board, Channel channel) {
        int position = 0;
        while (channel.filled().containsKey(board.slot(channel.socket(), channel.index(), position))) {
            position++;
        }
        return board.slot(channel.socket(), channel.index(), position);
    }
}
