package sledwright.generator;

import sledwright.generator.memory.MemoryOption;
import sledwright.generator.memory.MemoryWindow;

/**
 * What memory is wanted of an option beside a frame. Where little is known of what can be had, that is nearly all there is, and pricing it
 * takes long; so what promises most is looked at first, and what that leaves, if anything, is wanted after it.
 */
final class Wanted {

    /** How far above the least conceivable price, as a share of it, one looks at first, and then. */
    private static final double[] DEARER = {0.06, 0.4};

    /** What share of the most conceivable figure is wanted at first, and then. */
    private static final double[] REACHED = {0.97, 0.75};

    private final Ranking ranking;
    private final Frame frame;
    private final MemoryOption option;
    private final MemoryWindow inZone;

    /**
     * @param usableGb     the least usable memory of a build
     * @param bandwidthGbs its least bandwidth
     * @param microwatts   what its memory may load a machine with at most
     */
    Wanted(Ranking ranking, Frame frame, MemoryOption option, double usableGb, double bandwidthGbs, double microwatts) {
        this.ranking = ranking;
        this.frame = frame;
        this.option = option;
        inZone = MemoryWindow.ALL.noSmaller(usableGb).noNarrower(width(bandwidthGbs)).noHeavier(microwatts);
    }

    private double width(double gbs) {
        return (gbs - 2e-6) / Ranking.gbsOfWidth(frame, option) - 1e-9;
    }

    /** All that may come before a build, or at all where there is none. */
    private MemoryWindow all(Combination best) {
        return ranking.window(frame, option, best, inZone);
    }

    MemoryWindow first(Combination best) {
        return step(all(best), 0);
    }

    /**
     * What to look at next; null where nothing more is wanted.
     *
     * @param best  of all that was looked at
     * @param seen  what was
     * @param steps how many
     */
    MemoryWindow next(Combination best, MemoryWindow seen, int steps) {
        MemoryWindow all = all(best);
        return steps > DEARER.length || seen.holds(all) ? null : step(all, steps);
    }

    private MemoryWindow step(MemoryWindow all, int step) {
        return step < DEARER.length ? ranking.promising(frame, option, all, DEARER[step], REACHED[step]) : all;
    }
}
