package sledwright.metrics;

import java.util.Set;
import java.util.stream.Stream;
import sledwright.domain.Build;
import sledwright.domain.CoolingKit;
import sledwright.domain.Platform;
import sledwright.domain.Slot;

/** Slots of fitted sockets that are empty and that the heat sinks leave free. */
public final class SpareSlots {

    private SpareSlots() {
    }

    /** Slots of the first {@code sockets} sockets that the kit does not cover. */
    public static int uncovered(Platform platform, CoolingKit cooling, int sockets) {
        return (int) uncovered(platform, cooling).filter(slot -> slot.socket() < sockets).count();
    }

    private static Stream<Slot> uncovered(Platform platform, CoolingKit cooling) {
        Set<Slot> covered = platform.covered(cooling);
        return platform.board().slots().stream().filter(slot -> !covered.contains(slot));
    }

    /** Spare slots of a build. */
    public static int of(Build build) {
        return (int) uncovered(build.platform(), build.cooling()).filter(slot -> slot.socket() < build.processors().size()
                && !build.modules().containsKey(slot)).count();
    }
}
