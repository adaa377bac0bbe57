package sledwright.domain;

/**
 * The least figures of a machine's memory; a figure of 0 asks for nothing.
 *
 * @param memoryGb   usable memory
 * @param spareSlots slots that stay empty and uncovered on fitted sockets
 * @param populated  how memory is populated
 */
public record MemoryNeeds(double memoryGb, double bandwidthGbs, double gbPerCore, double gbsPerCore, int spareSlots, MemoryMode mode,
                          MemoryWish populated) {

    public static final MemoryNeeds NONE = new MemoryNeeds(0, 0, 0, 0, 0, MemoryMode.INDEPENDENT);

    /** Needs that leave it open how memory is populated. */
    public MemoryNeeds(double memoryGb, double bandwidthGbs, double gbPerCore, double gbsPerCore, int spareSlots, MemoryMode mode) {
        this(memoryGb, bandwidthGbs, gbPerCore, gbsPerCore, spareSlots, mode, MemoryWish.NONE);
    }

    public MemoryNeeds withMode(MemoryMode other) {
        return new MemoryNeeds(memoryGb, bandwidthGbs, gbPerCore, gbsPerCore, spareSlots, other, populated);
    }

    public MemoryNeeds withSpareSlots(int least) {
        return new MemoryNeeds(memoryGb, bandwidthGbs, gbPerCore, gbsPerCore, least, mode, populated);
    }

    public MemoryNeeds withPopulated(MemoryWish other) {
        return new MemoryNeeds(memoryGb, bandwidthGbs, gbPerCore, gbsPerCore, spareSlots, mode, other);
    }

    public MemoryNeeds withGbPerCore(double least) {
        return new MemoryNeeds(memoryGb, bandwidthGbs, least, gbsPerCore, spareSlots, mode, populated);
    }
}
