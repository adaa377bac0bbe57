package sledwright.generator;

import java.util.List;
import sledwright.generator.memory.MemoryOption;
import sledwright.generator.memory.MemoryNeed;

/**
 * Frames of one platform, processor count and cooling kit, which choose among the same memory.
 *
 * @param frames  the one that promises most to the objective first
 * @param options the memory that suits the board, by module type, fastest first within each
 * @param need    what the request asks of it
 */
record Family(List<Frame> frames, List<MemoryOption> options, MemoryNeed need) {
}
