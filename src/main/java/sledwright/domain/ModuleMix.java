package sledwright.domain;

import java.util.Set;

/**
 * Which modules may share a machine, and how many a socket.
 *
 * @param maxDistinctCapacities most distinct module capacities in one machine
 * @param widths                whether x4 and x8 modules may share a machine
 * @param countsPerSocket       the module counts that a socket supports; empty: any
 */
public record ModuleMix(int maxDistinctCapacities, boolean widths, Set<Integer> countsPerSocket) {

    public ModuleMix {
        countsPerSocket = Set.copyOf(countsPerSocket);
    }
}
