package sledwright.domain;

import java.util.List;
import java.util.Set;

/**
 * What a platform's sockets take.
 *
 * @param counts  the numbers of processors that the platform runs with, ascending
 * @param maxTdpW the hottest processor that the board feeds, watts
 */
public record ProcessorSupport(String socket, Set<String> generations, List<Integer> counts, double maxTdpW) {

    public ProcessorSupport {
        generations = Set.copyOf(generations);
        counts = counts.stream().sorted().toList();
    }

    /** Sockets on the board. */
    public int sockets() {
        return counts.get(counts.size() - 1);
    }
}
