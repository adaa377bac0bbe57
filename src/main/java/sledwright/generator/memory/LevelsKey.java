package sledwright.generator.memory;

import java.util.List;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemorySupport;
import sledwright.domain.ModuleType;
import sledwright.generator.keep.Kept;

/**
 * All that the levels of a type depend on.
 *
 * @param width   device width of all modules where the platform does not mix them; else 0
 * @param modules those of the platform's generation and this type and width
 */
record LevelsKey(MemorySupport memory, ModuleType type, int width, List<MemoryModule> modules, boolean sparing)
        implements Kept.Key<List<Level>> {

    private static final long BYTES_OF_MODULE = 50;

    @Override
    public long bytes(List<Level> levels) {
        return BYTES_OF_MODULE * modules.size() * (1 + levels.size());
    }
}
