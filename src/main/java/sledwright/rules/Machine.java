package sledwright.rules;

import java.util.Map;
import sledwright.domain.Build;
import sledwright.domain.Request;
import sledwright.metrics.Figures;

/** A build beside the request it answers, with its figures. */
public record Machine(Build build, Request request, Figures figures) {

    /**
     * @param factors generation -> throughput of one core at one GHz
     */
    public static Machine of(Build build, Request request, Map<String, Double> factors) {
        return new Machine(build, request, Figures.of(build, request, factors));
    }
}
