package sledwright.domain;

import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A processor.
 *
 * @param socketsMax the most of its kind that work together in one machine
 * @param throughput the catalogue's figure for one processor; empty where it has none and the estimate serves
 */
public record Processor(String sku, String description, Fit fit, CoreFigures figures, MemoryReach memory, int socketsMax,
                        OptionalDouble throughput) implements Part {

    /** What boards take it by: they take all that are alike in it, or none. */
    public record Fit(String socket, String generation) {
    }

    /** Its cores, and what they run at. */
    public record CoreFigures(int cores, int threads, double baseGhz, double allCoreGhz, double tdpW) {
    }

    /**
     * The memory that it drives.
     *
     * @param mts   the fastest, MT/s
     * @param maxGb all that it addresses; empty where the catalogue states no limit
     */
    public record MemoryReach(int mts, OptionalInt maxGb) {
    }

    public String socket() {
        return fit.socket();
    }

    public String generation() {
        return fit.generation();
    }

    public int cores() {
        return figures.cores();
    }

    public double baseGhz() {
        return figures.baseGhz();
    }

    public double allCoreGhz() {
        return figures.allCoreGhz();
    }

    public double tdpW() {
        return figures.tdpW();
    }

    public int memoryMts() {
        return memory.mts();
    }

    public OptionalInt maxMemoryGb() {
        return memory.maxGb();
    }

    /** Part numbers are unique; all that is said of a part takes long. */
    @Override
    public int hashCode() {
        return sku.hashCode();
    }
}
