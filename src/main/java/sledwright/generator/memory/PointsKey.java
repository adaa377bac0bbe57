package sledwright.generator.memory;

import sledwright.generator.keep.Content;
import sledwright.generator.keep.Kept;

/**
 * All that the points of an option depend on: where only other lots have changed, they stand.
 *
 * @param mostSocketGb with at most a given number of GB on a socket
 */
record PointsKey(OfOption option, MemoryNeed need, int mostSocketGb, MemoryWindow window) implements Kept.Key<MemoryPoints> {

    private static final long BYTES_OF_LOT = 100;

    /** @param lots how many lots are in it */
    record OfOption(Content content, int lots) {
    }

    @Override
    public long bytes(MemoryPoints points) {
        return BYTES_OF_LOT * option.lots + points.bytes();
    }
}
