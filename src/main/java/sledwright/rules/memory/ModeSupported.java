package sledwright.rules.memory;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import sledwright.domain.Build;
import sledwright.domain.Channel;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemorySupport;
import sledwright.domain.Slot;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/**
 * {@value #ID}: the platform supports the required mode and the population suits it. Mirroring pairs channels in board order
 * and wants both of a pair alike in every slot; rank sparing wants two ranks on every populated channel.
 */
public final class ModeSupported extends Rule<Machine> {

    public static final String ID = "memory-mode";

    /** The ranks that a channel needs so that one can be held back. */
    private static final int RANKS_TO_SPARE_ONE = 2;

    public ModeSupported() {
        super(ID, "The platform supports the required memory mode, and so does the population.", "require.memory_mode");
    }

    /** Whether the platform offers the mode at all. */
    public static boolean allows(MemorySupport memory, MemoryMode mode) {
        return switch (mode) {
            case INDEPENDENT -> true;
            case MIRRORED -> memory.modes().mirroredFraction().isPresent() && memory.channels() % 2 == 0;
            case RANK_SPARING -> memory.modes().rankSparing();
        };
    }

    /** Whether a populated channel of a given number of physical ranks can spare one. */
    public static boolean allowsSparing(int ranksOnChannel) {
        return ranksOnChannel >= RANKS_TO_SPARE_ONE;
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Build build = machine.build();
        MemoryMode mode = machine.request().require().mode();
        if (!allows(build.platform().memory(), mode)) {
            return List.of(broken(build.platform().sku(), "%s does not support memory mode %s.", build.platform().sku(), mode));
        }
        return switch (mode) {
            case INDEPENDENT -> List.of();
            case MIRRORED -> Sockets.populated(build).flatMap(channels -> unmatchedPairs(build, channels)).toList();
            case RANK_SPARING -> Sockets.populatedChannels(build)
                    .filter(channel -> !allowsSparing(channel.modules().stream().mapToInt(MemoryModule::ranks).sum()))
                    .map(channel -> broken(channel.name(), "Channel %s carries a single rank; rank sparing needs two.", channel.name()))
                    .toList();
        };
    }

    private Stream<Violation> unmatchedPairs(Build build, List<Channel> channels) {
        List<Violation> broken = new ArrayList<>();
        for (int first = 0; first + 1 < channels.size(); first += 2) {
            for (int position = 0; position < build.platform().board().slotsPerChannel(); position++) {
                Slot one = build.platform().board().slot(channels.get(first).socket(), first, position);
                Slot other = build.platform().board().slot(channels.get(first).socket(), first + 1, position);
                if (!MatchedSockets.allows(Optional.ofNullable(build.modules().get(one)),
                        Optional.ofNullable(build.modules().get(other)))) {
                    broken.add(broken(one.name(), "Slots %s and %s mirror each other and do not hold alike modules.", one.name(),
                            other.name()));
                }
            }
        }
        return broken.stream();
    }
}
