package sledwright.book;

import java.util.List;
import sledwright.domain.Equipment;
import sledwright.domain.Limits;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.VolumeWish;

/**
 * What makes requests alike: they ask for the same things, and for about as much of each.
 *
 * @param things  what is asked for, whatever the amount
 * @param figures the amounts
 */
record Likeness(List<Object> things, List<Double> figures) {

    /** Of alike amounts the greater is at most so many times the smaller. */
    private static final double ABOUT = 1.25;

    static Likeness of(Request request) {
        Requirements require = request.require();
        Limits limit = request.limit();
        Equipment equipment = request.equipment();
        List<Double> figures = List.of((double) request.machines(), (double) require.processors(), (double) require.cores(),
                require.memoryGb(), require.bandwidthGbs(), require.throughput(), require.baseGhz(), require.allCoreGhz(),
                require.gbPerCore(),
                require.gbsPerCore(), (double) require.spareSlots(), require.work().least(), limit.powerW().orElse(0),
                equipment.volumes().stream().mapToDouble(VolumeWish::usableGb).sum());
        List<Object> things = List.of(request.platforms(), request.forbid(), request.use(), require.mode(), require.populated(),
                require.work().workload(), limit.conditions(), limit.inletC(), limit.mainsV(), limit.altitudeM(),
                equipment.volumes().stream().map(volume -> volume.with(0)).toList(), equipment.cards(), equipment.extras(),
                equipment.enclosure());
        return new Likeness(things, figures);
    }

    boolean isLike(Likeness other) {
        if (!things.equals(other.things)) {
            return false;
        }
        for (int at = 0; at < figures.size(); at++) {
            double less = Math.min(figures.get(at), other.figures.get(at));
            double more = Math.max(figures.get(at), other.figures.get(at));
            if (more > ABOUT * less) {
                return false;
            }
        }
        return true;
    }
}
