package sledwright.generator.draw;

import java.util.List;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.generator.keep.Kept;
import sledwright.generator.shape.GroupKind;

/**
 * All that the draws of a group depend on, lots and all, so that requests which accept the same lots share them.
 *
 * @param leastUnits  of each module, units that all machines together must take
 * @param everyWeight whether heavier draws matter that cost as much as lighter ones
 */
public record DrawsKey(GroupKind group, List<MemoryModule> modules, List<Lot> lots, UnitCounts counts,
        List<Integer> leastUnits, boolean everyWeight) implements Kept.Key<CountedDraws> {

    private static final long BYTES_OF_LOT = 100;

    @Override
    public long bytes(CountedDraws draws) {
        return BYTES_OF_LOT * lots.size() + draws.bytes();
    }
}
