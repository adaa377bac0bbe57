package sledwright.domain;

/**
 * The least figures of a machine's processors; a figure of 0 asks for nothing.
 *
 * @param processors the exact number of processors; 0: any
 */
public record ProcessorNeeds(int processors, int cores, double throughput, double baseGhz, double allCoreGhz) {

    public static final ProcessorNeeds NONE = new ProcessorNeeds(0, 0, 0, 0, 0);

    public ProcessorNeeds withProcessors(int exactly) {
        return new ProcessorNeeds(exactly, cores, throughput, baseGhz, allCoreGhz);
    }
}
