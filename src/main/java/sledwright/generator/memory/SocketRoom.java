package sledwright.generator.memory;

import java.util.List;
import java.util.stream.IntStream;
import sledwright.domain.CoolingKit;
import sledwright.domain.MemorySupport;
import sledwright.domain.Platform;
import sledwright.domain.Requirements;
import sledwright.generator.keep.Content;
import sledwright.generator.keep.Kept;
import sledwright.metrics.SpareSlots;
import sledwright.rules.cooling.BlockedSlot;
import sledwright.rules.target.Target;

/**
 * What the fitted sockets of a board have for modules under a kit.
 *
 * @param depths    for each socket, the modules that each channel has slots for; of sockets that are alike, one
 * @param uncovered slots that the kit leaves free
 * @param least     slots of a socket of which each channel has no more than in any of the others
 * @param content   all of that
 */
record SocketRoom(MemorySupport memory, List<List<Integer>> depths, int uncovered, int sockets, int least, Content content) {

    record Key(Platform platform, CoolingKit kit, int sockets) implements Kept.Key<SocketRoom> {

        private static final long BYTES = 1_000;

        @Override
        public long bytes(SocketRoom room) {
            return BYTES;
        }
    }

    /** How many modules a machine holds at most that keeps the spare slots it is asked for; below 0 where it has too few. */
    int mostModules(Requirements require) {
        int most = uncovered;
        while (most >= 0 && !Target.SPARE_SLOTS.allows(require, uncovered - most)) {
            most--;
        }
        return most;
    }

    static SocketRoom of(Platform platform, CoolingKit kit, int sockets) {
        MemorySupport memory = platform.memory();
        List<List<Integer>> depths = IntStream.range(0, sockets).mapToObj(socket -> IntStream.range(0, platform.board().channels())
                .mapToObj(channel -> BlockedSlot.depth(platform, kit, socket, channel)).toList()).distinct().toList();
        int uncovered = SpareSlots.uncovered(platform, kit, sockets);
        int least = IntStream.range(0, memory.channels())
                .map(channel -> depths.stream().mapToInt(depth -> depth.get(channel)).min().orElse(0)).sum();
        return new SocketRoom(memory, depths, uncovered, sockets, least, new Content(List.of(memory, depths, uncovered, sockets)));
    }
}
