package sledwright.domain;

import java.util.Set;

/**
 * What drives SATA and SAS drives: a board by itself, or a controller card. NVMe drives need none, so that NVMe counts for nothing here.
 *
 * @param links  the interfaces that it serves
 * @param ports  drives that it serves at most
 * @param levels the levels that it knows
 */
public record DriveSupport(Set<DriveInterface> links, int ports, Set<RaidLevel> levels) {

    public DriveSupport {
        links = Set.copyOf(links);
        levels = Set.copyOf(levels);
    }
}
