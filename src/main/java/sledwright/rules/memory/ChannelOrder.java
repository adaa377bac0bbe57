package sledwright.rules.memory;

import java.util.ArrayList;
import java.util.List;
import sledwright.domain.Build;
import sledwright.domain.Channel;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.rules.cooling.BlockedSlot;
import sledwright.words.Numbers;

/** {@value #ID}: no later channel holds more modules than an earlier one that has room. */
public final class ChannelOrder extends Rule<Machine> {

    public static final String ID = "channel-order";

    public ChannelOrder() {
        super(ID, "Channels are filled in the platform's order: no later channel holds more modules than an earlier one that has room.");
    }

    /**
     * Whether two channels of a socket stand in order.
     *
     * @param depth the modules that the earlier one has slots for
     */
    public static boolean allows(int earlier, int depth, int later) {
        return later <= earlier || earlier >= depth;
    }

    @Override
    public List<Violation> judge(Machine machine) {
        return Sockets.populated(machine.build()).flatMap(channels -> judge(machine.build(), channels).stream()).toList();
    }

    private List<Violation> judge(Build build, List<Channel> channels) {
        List<Violation> broken = new ArrayList<>();
        for (Channel later : channels) {
            for (Channel earlier : channels.subList(0, later.index())) {
                int depth = BlockedSlot.depth(build.platform(), build.cooling(), earlier.socket(), earlier.index());
                if (!allows(earlier.filled().size(), depth, later.filled().size())) {
                    broken.add(broken(later.name(), "Channel %s holds %s while channel %s before it holds %s and has room.",
                            later.name(), Numbers.counted(later.filled().size(), "module"), earlier.name(),
                            earlier.filled().size()));
                    break;
                }
            }
        }
        return broken;
    }
}
