package sledwright.generator.memory;

/** What the memory of an option costs at least, and gives at most. */
public final class MemoryFloor {

    private final MemoryOption.Extent extent;
    private final PriceFloor prices;
    private final int slots;
    private LeastPrice last = new LeastPrice(Double.NaN, Double.NaN, Double.NaN);

    /** A question and its answer. */
    private record LeastPrice(double usableGb, double width, double price) {
    }

    /** @param withinSlots whether the number of slots counts, which takes longer to decide */
    public MemoryFloor(MemoryOption.Extent extent, PriceFloor prices, boolean withinSlots) {
        this.extent = extent;
        this.prices = prices;
        slots = withinSlots ? extent.machines() * extent.sockets() * extent.slots() : PriceFloor.ANY_SLOTS;
    }

    /** The least price (minor units, all machines) of populations of that usable memory and width; infinite where there is none. */
    public double leastPrice(double usableGb, double width) {
        // Frames ask in turn, mostly for the same; another thread may ask for something else meanwhile.
        LeastPrice known = last;
        if (usableGb != known.usableGb || width != known.width) {
            double gb = needGb(usableGb);
            double modules = Math.max(needModules(width), gb / extent.mostModuleGb());
            known = new LeastPrice(usableGb, width, prices.price(gb, modules, slots) + modules * extent.labourPerModule());
            last = known;
        }
        return known.price;
    }

    /** The least of price less worth of memory, both minor units for all machines, over populations of that usable memory and width. */
    public double leastPriceLessWorth(double usableGb, double width, int mostSocketGb) {
        double mostGb = (double) extent.machines() * extent.sockets() * Math.min(mostSocketGb, extent.mostSocketGb());
        return prices.priceLessWorth(needGb(usableGb), mostGb, slots) + needModules(width) * extent.labourPerModule();
    }

    /** The most usable GB of one machine that money for all machines buys. */
    public double mostUsableGbFor(double money) {
        return prices.mostGb(money, slots) / extent.machines() * extent.usableShare();
    }

    private double needGb(double usableGb) {
        return extent.machines() * usableGb / extent.usableShare();
    }

    private double needModules(double width) {
        return (double) extent.machines() * extent.sockets() * Math.max(1, Math.ceil(width - 1e-9));
    }
}
