package sledwright.metrics;

import java.util.Set;
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
        Set<Slot> covered = platform.covered(cooling);
        return (int) platform.board().slots().stream()
                .filter(slot -> slot.socket() < sockets && !covered.contains(slot)).count();
    }

    /** Spare slots of a build. */
    public static int of(Build build) {
        int sockets = build.processors().size();
        Set<Slot> covered = build.platform().covered(build.cooling());
        long filled = build.modules().keySet().stream()
                .filter(slot -> slot.socket() < sockets && !covered.contains(slot)).count();
        return uncovered(build.platform(), build.cooling(), sockets) - (int) filled;
    }
}
