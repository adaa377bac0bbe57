package sledwright.generator.shape;

import java.util.List;
import java.util.Set;
import sledwright.generator.keep.Kept;

/**
 * All that decides which populations a socket takes, prices apart. Platforms with equal keys share their shapes.
 *
 * @param groups      ascending
 * @param depths      for each fitted socket, the modules that each channel has slots for
 * @param counts      module counts that the socket supports; empty: any
 * @param balanced    whether all channels hold the same
 */
public record ShapeKey(List<GroupKind> groups, int slots, List<List<Integer>> depths, boolean mirrored, boolean sparing,
                int rankLimit, int maxDistinctCapacities, Set<Integer> counts, boolean balanced)
        implements Kept.Key<Shapes> {

    /** Modules that one module of a shape stands for on a socket. */
    public int multiple() {
        return mirrored ? 2 : 1;
    }

    /** How many modules each channel of such a socket may hold. */
    public Layouts layouts() {
        return new Layouts(depths, slots, mirrored);
    }

    @Override
    public long bytes(Shapes shapes) {
        return shapes.bytes();
    }

    @Override
    public boolean isDear() {
        return true;
    }
}
