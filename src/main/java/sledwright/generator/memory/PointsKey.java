package sledwright.generator.memory;

import java.util.List;
import sledwright.generator.keep.Kept;

/**
 * All that the points of an option depend on: where only other lots have changed, they stand.
 *
 * @param option       of the option
 * @param mostSocketGb with at most a given number of GB on a socket
 */
record PointsKey(Content option, int mostSocketGb) implements Kept.Key<MemoryPoints> {

    private static final long BYTES_OF_LOT = 100;

    @Override
    public long bytes(MemoryPoints points) {
        return BYTES_OF_LOT * option.lots + points.bytes();
    }

    /** Values of which equal ones are the same; what they come to as a whole is worked out once. */
    static final class Content {

        private final List<Object> values;
        private final int lots;
        private final int hash;

        /** @param lots how many lots are among them */
        Content(List<Object> values, int lots) {
            this.values = values;
            this.lots = lots;
            hash = values.hashCode();
        }

        @Override
        public int hashCode() {
            return hash;
        }

        @Override
        public boolean equals(Object other) {
            return this == other || other instanceof Content content && hash == content.hash && values.equals(content.values);
        }
    }
}
