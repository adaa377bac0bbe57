package sledwright.generator.shape;

import java.util.List;

/**
 * Where a socket takes modules.
 *
 * @param perChannel slots of a channel, covered or not
 * @param depths     for each fitted socket, the modules that each channel has slots for
 */
public record SocketSlots(int perChannel, List<List<Integer>> depths) {
}
