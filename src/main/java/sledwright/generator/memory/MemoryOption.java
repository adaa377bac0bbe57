package sledwright.generator.memory;

import java.util.function.Supplier;
import sledwright.generator.time.Deadline;
import sledwright.generator.time.UnfinishedException;
import sledwright.metrics.Bandwidth;

/**
 * Memory of one type at one speed level on the sockets of a family. Its bounds, and then its points, are worked out only
 * when they can still win.
 */
public final class MemoryOption {

    /** Works points out, or knows them. */
    public interface Builder {

        /** The points of what a request needs. */
        Points of(MemoryNeed need, Deadline deadline);
    }

    /** The points of what one request needs. */
    public interface Points {

        /** Those of a window, and perhaps others, with at most a given number of GB on a socket. */
        MemoryPoints within(int mostSocketGb, MemoryWindow window);
    }

    private final Level level;
    private final boolean keptApart;
    private final int nextSlowerMts;
    private final Extent extent;
    private final MemoryFloor coarse;
    private final Supplier<PriceFloor> ownPrices;
    private final Builder builder;
    private MemoryFloor fine;

    /**
     * What no population of the option goes beyond.
     *
     * @param sockets         fitted sockets
     * @param slots           slots of a socket that no heat sink covers
     * @param mostWidth       width of a socket, in fullest channels
     * @param mostModuleGb    capacity of a module
     * @param usableShare     share of the capacity that the memory mode leaves
     * @param labourPerModule minor units for one module
     */
    public record Extent(int machines, int sockets, int slots, int mostWidth, int mostModuleGb, double usableShare, long labourPerModule) {

        /** Capacity of a socket. */
        public int mostSocketGb() {
            return slots * mostModuleGb;
        }
    }

    /**
     * @param nextSlowerMts the next level of the type; 0 for the slowest
     * @param keptApart     whether groups could share units that the search keeps apart
     * @param allPrices     of all modules of the type, at whatever speed
     * @param ownPrices     of the level's own modules
     * @param builder       has its points
     */
    public MemoryOption(Level level, int nextSlowerMts, boolean keptApart, Extent extent, PriceFloor allPrices,
            Supplier<PriceFloor> ownPrices, Builder builder) {
        this.level = level;
        this.nextSlowerMts = nextSlowerMts;
        this.extent = extent;
        this.ownPrices = ownPrices;
        this.builder = builder;
        this.keptApart = keptApart;
        coarse = new MemoryFloor(extent, allPrices, false);
    }

    public Level level() {
        return level;
    }

    /** Whether groups of the level could share units that the search keeps apart, so that it may miss the best. */
    public boolean isKeptApart() {
        return keptApart;
    }

    /** Whether a processor of that limit needs this level: a slower one that reaches the limit holds all that this holds. */
    public boolean serves(int processorMts) {
        return nextSlowerMts < processorMts;
    }

    /** The speed under a processor's limit, MT/s. */
    public int speedMts(int processorMts) {
        return Math.min(level.mts(), processorMts);
    }

    /** The most usable GB of a machine whose sockets hold at most so much. */
    public double mostUsableGb(int mostSocketGb) {
        return extent.sockets * Math.min(mostSocketGb, extent.mostSocketGb()) * extent.usableShare;
    }

    /** What modules of a given number of GB draw at least, in watts: those of the lightest GB of the level. */
    public double leastW(double usableGb) {
        return usableGb * level.extremes().leastWPerGb();
    }

    public int mostWidth() {
        return extent.mostWidth;
    }

    /** The most GB/s of a machine under a processor's limit: every channel as full as the fullest. */
    public double widestGbs(int processorMts) {
        return Bandwidth.ofMachineGbs(extent.sockets, speedMts(processorMts), extent.mostWidth, 1);
    }

    /** Bounds that are quick to compute. */
    public MemoryFloor coarse() {
        return coarse;
    }

    /** Closer bounds: of the level's own modules only, and within the slots. */
    public MemoryFloor fine() {
        MemoryFloor known = fine;
        if (known == null) {
            known = new MemoryFloor(extent, ownPrices.get(), true);
            fine = known;
        }
        return known;
    }

    /**
     * The points of what a request needs, with no more on a socket than a processor addresses; for the one thread that works on the
     * request. Asking for some ends with an {@link UnfinishedException} when the deadline comes first, or a socket has more populations
     * than are listed.
     */
    public Points points(MemoryNeed need, Deadline deadline) {
        Points all = builder.of(need, deadline);
        return (mostSocketGb, window) -> all.within(Math.min(mostSocketGb, extent.mostSocketGb()), window);
    }
}
