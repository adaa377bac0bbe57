package sledwright.generator.memory;

import java.util.List;
import java.util.Set;
import sledwright.generator.keep.Content;
import sledwright.generator.keep.Kept;

/**
 * The options of a market on boards of equal rules.
 *
 * @param market this one only
 * @param room   all of a board that they depend on
 * @param barred modules that do not go onto the board
 */
record OptionsKey(MemoryMarket market, Content room, Set<String> barred) implements Kept.Key<List<MemoryOption>> {

    private static final long BYTES_OF_OPTION = 350;

    @Override
    public long bytes(List<MemoryOption> options) {
        return BYTES_OF_OPTION * options.size();
    }
}
