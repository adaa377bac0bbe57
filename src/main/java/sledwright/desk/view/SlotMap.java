package sledwright.desk.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import sledwright.domain.Board;
import sledwright.domain.Build;
import sledwright.domain.MemoryModule;
import sledwright.domain.Slot;

/**
 * The memory slots of one machine, socket by socket, channel by channel.
 *
 * @param fillSide words for the bench: which slot of a channel is its first; may be empty
 */
public record SlotMap(List<List<Row>> sockets, String fillSide) {

    /**
     * One channel.
     *
     * @param name such as {@code 1A}
     */
    public record Row(String name, List<Cell> cells) {
    }

    /**
     * One slot.
     *
     * @param name    the board's own name
     * @param holds   the part in it; empty where there is none
     * @param covered whether a heat sink covers it
     * @param fitted  whether its socket has a processor
     */
    public record Cell(String name, String holds, boolean covered, boolean fitted) {
    }

    public static SlotMap of(Build build) {
        Board board = build.platform().board();
        Set<Slot> covered = build.platform().covered(build.cooling());
        List<List<Row>> sockets = new ArrayList<>();
        for (int socket = 0; socket < board.sockets(); socket++) {
            boolean fitted = socket < build.processors().size();
            List<Row> rows = new ArrayList<>();
            for (int channel = 0; channel < board.channels(); channel++) {
                List<Cell> cells = new ArrayList<>();
                for (int position = 0; position < board.slotsPerChannel(); position++) {
                    Slot slot = board.slot(socket, channel, position);
                    MemoryModule module = build.modules().get(slot);
                    cells.add(new Cell(slot.name(), module == null ? "" : module.sku(), fitted && covered.contains(slot), fitted));
                }
                rows.add(new Row(Slot.channelName(socket, channel), List.copyOf(cells)));
            }
            sockets.add(List.copyOf(rows));
        }
        return new SlotMap(List.copyOf(sockets), build.platform().board().fillSide());
    }
}
