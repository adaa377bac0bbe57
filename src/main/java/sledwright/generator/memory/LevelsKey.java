package sledwright.generator.memory;

import java.util.List;
import java.util.Objects;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemorySupport;
import sledwright.generator.keep.Kept;

/**
 * All that the levels of a board depend on.
 *
 * @param onePart whether all modules of a machine are to be of one part number
 * @param modules those of the platform's generation that may go onto it
 */
record LevelsKey(MemorySupport memory, boolean onePart, boolean sparing, List<MemoryModule> modules)
        implements Kept.Key<List<List<Level>>> {

    private static final long BYTES_OF_MODULE = 50;
    private static final long BYTES_OF_LEVEL = 200;

    /** What tells most apart; all that is said of memory takes long. */
    @Override
    public int hashCode() {
        return Objects.hash(memory.generation(), memory.channels(), memory.slotsPerChannel(), onePart, sparing, modules);
    }

    @Override
    public long bytes(List<List<Level>> levels) {
        long bytes = BYTES_OF_MODULE * modules.size();
        for (List<Level> fastestFirst : levels) {
            for (Level level : fastestFirst) {
                bytes += BYTES_OF_LEVEL + BYTES_OF_MODULE * level.modules().size();
            }
        }
        return bytes;
    }
}
