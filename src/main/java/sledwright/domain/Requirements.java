package sledwright.domain;

/**
 * The least figures of one machine; a figure of 0 asks for nothing.
 *
 * @param work what the machine is to do, and how much of it
 */
public record Requirements(ProcessorNeeds processing, MemoryNeeds memory, WorkWish work) {

    public static final Requirements NONE = new Requirements(ProcessorNeeds.NONE, MemoryNeeds.NONE);

    /** Requirements of a machine that is to do nothing in particular. */
    public Requirements(ProcessorNeeds processing, MemoryNeeds memory) {
        this(processing, memory, WorkWish.NONE);
    }

    public int processors() {
        return processing.processors();
    }

    public int cores() {
        return processing.cores();
    }

    public double throughput() {
        return processing.throughput();
    }

    public double baseGhz() {
        return processing.baseGhz();
    }

    public double allCoreGhz() {
        return processing.allCoreGhz();
    }

    public double memoryGb() {
        return memory.memoryGb();
    }

    public double bandwidthGbs() {
        return memory.bandwidthGbs();
    }

    public double gbPerCore() {
        return memory.gbPerCore();
    }

    public double gbsPerCore() {
        return memory.gbsPerCore();
    }

    public int spareSlots() {
        return memory.spareSlots();
    }

    public MemoryMode mode() {
        return memory.mode();
    }

    public MemoryWish populated() {
        return memory.populated();
    }

    /** The same with another number of processors; 0: any. */
    public Requirements withProcessors(int exactly) {
        return new Requirements(processing.withProcessors(exactly), memory, work);
    }

    /** The same in another memory mode. */
    public Requirements withMode(MemoryMode other) {
        return new Requirements(processing, memory.withMode(other), work);
    }

    /** The same with another number of slots that stay empty. */
    public Requirements withSpareSlots(int least) {
        return new Requirements(processing, memory.withSpareSlots(least), work);
    }

    /** The same with memory populated otherwise. */
    public Requirements withPopulated(MemoryWish other) {
        return new Requirements(processing, memory.withPopulated(other), work);
    }

    /** The same for other work. */
    public Requirements withWork(WorkWish other) {
        return new Requirements(processing, memory, other);
    }

    /** The same with other usable memory for each core. */
    public Requirements withGbPerCore(double least) {
        return new Requirements(processing, memory.withGbPerCore(least), work);
    }
}
