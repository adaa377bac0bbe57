package sledwright.generator.memory;

import java.util.List;
import sledwright.domain.MemorySupport;

/**
 * What the fitted sockets of a board have for modules under a kit.
 *
 * @param depths    for each socket, the modules that each channel has slots for; of sockets that are alike, one
 * @param uncovered slots that the kit leaves free
 */
record SocketRoom(MemorySupport memory, List<List<Integer>> depths, int uncovered, int sockets) {
}
