package sledwright.generator.memory;

import java.util.List;
import sledwright.generator.draw.Draw;
import sledwright.generator.draw.EntangledDraws;

/**
 * The worthwhile draws of a group of modules.
 *
 * @param own for each number of modules; null for an entangled group
 * @param set the draws of the set that the group is entangled in; null for one that stands by itself
 */
record GroupDraws(List<List<Draw>> own, EntangledDraws set) {
}
