package sledwright.generator;

import java.util.HashMap;
import java.util.Map;
import java.util.function.IntFunction;
import sledwright.metrics.Bandwidth;

/**
 * Memory of one type at one speed level on the sockets of a family. Its points are worked out only when its bounds can
 * still win.
 */
final class MemoryOption {

    /**
     * What no population of the option goes beyond.
     *
     * @param sockets         fitted sockets
     * @param mostSocketGb    capacity of a socket
     * @param slots           slots of a socket that no heat sink covers
     * @param mostWidth       width of a socket, in fullest channels
     * @param mostModuleGb    capacity of a module
     * @param usableShare     share of the capacity that the memory mode leaves
     * @param labourPerModule minor units for one module
     */
    record Extent(int machines, int sockets, int slots, int mostSocketGb, int mostWidth, int mostModuleGb, double usableShare,
                  long labourPerModule) {
    }

    private final Level level;
    private final boolean entangled;
    private final int nextSlowerMts;
    private final Extent extent;
    private final PriceFloor floor;
    private final IntFunction<MemoryPoints> builder;
    private final Map<Integer, MemoryPoints> built = new HashMap<>();
    private double askedUsableGb = Double.NaN;
    private double askedWidth = Double.NaN;
    private double answered;

    /**
     * @param nextSlowerMts the next level of the type; 0 for the slowest
     * @param builder       most GB of a socket -> points
     */
    MemoryOption(Level level, int nextSlowerMts, Extent extent, PriceFloor floor, IntFunction<MemoryPoints> builder) {
        this.level = level;
        entangled = level.isEntangled();
        this.nextSlowerMts = nextSlowerMts;
        this.extent = extent;
        this.floor = floor;
        this.builder = builder;
    }

    Level level() {
        return level;
    }

    /** Whether the level's groups could share units that the search keeps apart: see {@link Level#isEntangled()}. */
    boolean isEntangled() {
        return entangled;
    }

    /** Whether a processor of that limit needs this level: a slower one that reaches the limit holds all that this holds. */
    boolean serves(int processorMts) {
        return nextSlowerMts < processorMts;
    }

    /** The speed under a processor's limit, MT/s. */
    int speedMts(int processorMts) {
        return Math.min(level.mts(), processorMts);
    }

    /** The most usable GB of a machine whose sockets hold at most so much. */
    double mostUsableGb(int mostSocketGb) {
        return extent.sockets * Math.min(mostSocketGb, extent.mostSocketGb) * extent.usableShare;
    }

    int mostWidth() {
        return extent.mostWidth;
    }

    /** The most GB/s of a machine under a processor's limit: every channel as full as the fullest. */
    double widestGbs(int processorMts) {
        return Bandwidth.ofMachineGbs(extent.sockets, speedMts(processorMts), extent.mostWidth, 1);
    }

    /** The least price (minor units, all machines) of populations of that usable memory and width; infinite where there is none. */
    double leastPrice(double usableGb, double width) {
        // Frames ask in turn, mostly for the same.
        if (usableGb != askedUsableGb || width != askedWidth) {
            double gb = needGb(usableGb);
            double modules = Math.max(needModules(width), gb / extent.mostModuleGb);
            answered = floor.price(gb, modules, mostModules()) + modules * extent.labourPerModule;
            askedUsableGb = usableGb;
            askedWidth = width;
        }
        return answered;
    }

    /** The least of price less worth of memory, both minor units for all machines, over populations of that usable memory and width. */
    double leastPriceLessWorth(double usableGb, double width, int mostSocketGb) {
        double mostGb = (double) extent.machines * extent.sockets * Math.min(mostSocketGb, extent.mostSocketGb);
        return floor.priceLessWorth(needGb(usableGb), mostGb, mostModules()) + needModules(width) * extent.labourPerModule;
    }

    private int mostModules() {
        return extent.machines * extent.sockets * extent.slots;
    }

    /** The most usable GB of one machine that money for all machines buys. */
    double mostUsableGbFor(double money) {
        return floor.mostGb(money, mostModules()) / extent.machines * extent.usableShare;
    }

    private double needGb(double usableGb) {
        return extent.machines * usableGb / extent.usableShare;
    }

    private double needModules(double width) {
        return (double) extent.machines * extent.sockets * Math.max(1, Math.ceil(width - 1e-9));
    }

    /**
     * The points with no more on a socket than a processor addresses.
     *
     * @throws OutOfTimeException when the deadline comes first
     */
    MemoryPoints points(int mostSocketGb) {
        int most = Math.min(mostSocketGb, extent.mostSocketGb);
        return built.computeIfAbsent(most, builder::apply);
    }
}
