package sledwright.generator.memory;

import java.util.List;
import java.util.function.LongConsumer;
import sledwright.generator.draw.CountedDraws;
import sledwright.generator.draw.Draw;
import sledwright.generator.draw.EntangledDraws;
import sledwright.generator.time.Deadline;

/**
 * The worthwhile draws of a group of modules.
 *
 * @param own   by number of modules; null for an entangled group
 * @param grown is told how many bytes these take besides
 * @param set   the draws of the set that the group is entangled in; null for one that stands by itself
 */
record GroupDraws(CountedDraws own, LongConsumer grown, EntangledDraws set) {

    List<Draw> of(int modules, Deadline deadline) {
        return own.of(modules, deadline, grown);
    }
}
