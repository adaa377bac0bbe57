package sledwright.generator;

import java.util.List;
import sledwright.metrics.Quantity;

/**
 * A box of figures: all builds of at least a given work, cores, GB/s and usable GB and at most a given load in watts.
 * An alternative is the best build of some zone in which a build would still be kept.
 */
record Zone(double work, double cores, double bandwidthGbs, double usableGb, double loadW) {

    static final Zone EVERYTHING = new Zone(0, 0, 0, 0, Double.POSITIVE_INFINITY);

    boolean contains(Combination build) {
        return build.work() >= work && build.cores() >= cores && build.bandwidthGbs() >= bandwidthGbs
                && build.usableGb() >= usableGb && build.loadW() <= loadW;
    }

    /** Whether every build of this zone is one of the other's too. */
    boolean isWithin(Zone other) {
        return work >= other.work && cores >= other.cores && bandwidthGbs >= other.bandwidthGbs
                && usableGb >= other.usableGb && loadW <= other.loadW;
    }

    /** The parts of this zone in which builds are better than a kept one by a share of its figure, one part for each figure. */
    List<Zone> beyond(Combination kept, double step) {
        return List.of(
                new Zone(Math.max(work, Quantity.betterThan(kept.work(), step)), cores, bandwidthGbs, usableGb, loadW),
                new Zone(work, Math.max(cores, Quantity.betterThan(kept.cores(), step)), bandwidthGbs, usableGb, loadW),
                new Zone(work, cores, Math.max(bandwidthGbs, Quantity.betterThan(kept.bandwidthGbs(), step)), usableGb, loadW),
                new Zone(work, cores, bandwidthGbs, Math.max(usableGb, Quantity.betterThan(kept.usableGb(), step)), loadW),
                new Zone(work, cores, bandwidthGbs, usableGb, Math.min(loadW, Quantity.lessThan(kept.loadW(), step))));
    }
}
