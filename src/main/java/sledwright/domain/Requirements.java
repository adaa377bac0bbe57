package sledwright.domain;

/**
 * The least figures of one machine; a figure of 0 asks for nothing.
 *
 * @param processors   the exact number of processors; 0: any
 * @param memoryGb     usable memory
 * @param spareSlots   slots that stay empty and uncovered on fitted sockets
 * @param populated    how memory is populated
 * @param work         what the machine is to do, and how much of it
 */
public record Requirements(int processors, int cores, double memoryGb, double bandwidthGbs, double throughput,
                           double baseGhz, double allCoreGhz, double gbPerCore, double gbsPerCore, int spareSlots,
                           MemoryMode mode, MemoryWish populated, WorkWish work) {

    public static final Requirements NONE = new Requirements(0, 0, 0, 0, 0, 0, 0, 0, 0, 0, MemoryMode.INDEPENDENT);

    /** Requirements that leave it open how memory is populated. */
    public Requirements(int processors, int cores, double memoryGb, double bandwidthGbs, double throughput, double baseGhz,
                        double allCoreGhz, double gbPerCore, double gbsPerCore, int spareSlots, MemoryMode mode) {
        this(processors, cores, memoryGb, bandwidthGbs, throughput, baseGhz, allCoreGhz, gbPerCore, gbsPerCore, spareSlots, mode,
                MemoryWish.NONE);
    }

    /** Requirements of a machine that is to do nothing in particular. */
    public Requirements(int processors, int cores, double memoryGb, double bandwidthGbs, double throughput, double baseGhz,
                        double allCoreGhz, double gbPerCore, double gbsPerCore, int spareSlots, MemoryMode mode, MemoryWish populated) {
        this(processors, cores, memoryGb, bandwidthGbs, throughput, baseGhz, allCoreGhz, gbPerCore, gbsPerCore, spareSlots, mode,
                populated, WorkWish.NONE);
    }

    /** The same with another number of processors; 0: any. */
    public Requirements withProcessors(int exactly) {
        return new Requirements(exactly, cores, memoryGb, bandwidthGbs, throughput, baseGhz, allCoreGhz, gbPerCore, gbsPerCore,
                spareSlots, mode, populated, work);
    }

    /** The same in another memory mode. */
    public Requirements withMode(MemoryMode other) {
        return new Requirements(processors, cores, memoryGb, bandwidthGbs, throughput, baseGhz, allCoreGhz, gbPerCore, gbsPerCore,
                spareSlots, other, populated, work);
    }

    /** The same with memory populated otherwise. */
    public Requirements withPopulated(MemoryWish other) {
        return new Requirements(processors, cores, memoryGb, bandwidthGbs, throughput, baseGhz, allCoreGhz, gbPerCore, gbsPerCore,
                spareSlots, mode, other, work);
    }

    /** The same for other work. */
    public Requirements withWork(WorkWish other) {
        return new Requirements(processors, cores, memoryGb, bandwidthGbs, throughput, baseGhz, allCoreGhz, gbPerCore, gbsPerCore,
                spareSlots, mode, populated, other);
    }

    /** The same with other usable memory for each core. */
    public Requirements withGbPerCore(double least) {
        return new Requirements(processors, cores, memoryGb, bandwidthGbs, throughput, baseGhz, allCoreGhz, least, gbsPerCore,
                spareSlots, mode, populated, work);
    }
}
