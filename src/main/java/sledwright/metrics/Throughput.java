package sledwright.metrics;

import java.util.Map;
import sledwright.domain.Processor;

/**
 * A processor's throughput.
 *
 * @param estimated whether the catalogue has no figure of its own and cores x all-core GHz x the generation's factor stands in
 */
public record Throughput(double value, boolean estimated) {

    /**
     * The throughput of one processor.
     *
     * @param factors generation -> throughput of one core at one GHz
     */
    public static Throughput of(Processor processor, Map<String, Double> factors) {
        if (processor.throughput().isPresent()) {
            return new Throughput(processor.throughput().getAsDouble(), false);
        }
        double factor = factors.getOrDefault(processor.generation(), 0.0);
        return new Throughput(processor.cores() * processor.allCoreGhz() * factor, true);
    }

    /** The throughput of {@code processors} of the kind together. */
    public double times(int processors) {
        return Quantity.rounded(value * processors);
    }
}
