package sledwright.domain;

import java.util.OptionalInt;
import java.util.Set;

/**
 * Drive bays of one kind.
 *
 * @param levels the levels that the group knows for NVMe drives, which hang on it
 * @param socket the socket, from 1, that the bays are wired to; empty: none, they always count
 */
public record BayGroup(String name, int count, Set<FormFactor> formFactors, Set<DriveInterface> links, Set<RaidLevel> levels,
                       OptionalInt socket) {

    public BayGroup {
        formFactors = Set.copyOf(formFactors);
        links = Set.copyOf(links);
        levels = Set.copyOf(levels);
    }
}
