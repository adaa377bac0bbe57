package sledwright.domain;

import java.util.List;
import java.util.Set;

/**
 * What a platform's sockets take.
 *
 * @param counts  the numbers of processors that the platform runs with, ascending
 * @param maxTdpW the hottest processor that the board feeds, watts
 * @param sockets sockets on the board, of which some may have to stay empty
 */
public record ProcessorSupport(String socket, Set<String> generations, List<Integer> counts, double maxTdpW, int sockets) {

    public ProcessorSupport {
        generations = Set.copyOf(generations);
        counts = counts.stream().sorted().toList();
    }
}
