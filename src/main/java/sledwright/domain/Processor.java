package sledwright.domain;

import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A processor.
 *
 * @param memoryMts   the fastest memory it drives, MT/s
 * @param maxMemoryGb the memory it addresses, GB; empty where the catalogue states no limit
 * @param socketsMax  the most of its kind that work together in one machine
 * @param throughput  the catalogue's figure for one processor; empty where it has none and the estimate serves
 */
public record Processor(String sku, String description, String socket, String generation, int cores, int threads,
                        double baseGhz, double allCoreGhz, double tdpW, int memoryMts, OptionalInt maxMemoryGb,
                        int socketsMax, OptionalDouble throughput) implements Part {
}
