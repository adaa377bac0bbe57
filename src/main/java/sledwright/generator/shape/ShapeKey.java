package sledwright.generator.shape;

import java.util.List;
import java.util.Set;
import sledwright.domain.MemoryMode;
import sledwright.generator.keep.Kept;

/**
 * All that decides which populations a socket takes, prices apart. Platforms with equal keys share their shapes.
 *
 * @param groups   ascending
 * @param counts   module counts that the socket supports; empty: any
 * @param balanced whether all channels hold the same
 */
public record ShapeKey(List<GroupKind> groups, SocketSlots slots, MemoryMode mode, int rankLimit, int maxDistinctCapacities,
                       Set<Integer> counts, boolean balanced) implements Kept.Key<Shapes> {

    public boolean mirrored() {
        return mode == MemoryMode.MIRRORED;
    }

    public boolean sparing() {
        return mode == MemoryMode.RANK_SPARING;
    }

    /** Modules that one module of a shape stands for on a socket. */
    public int multiple() {
        return mirrored() ? 2 : 1;
    }

    /** How many modules each channel of such a socket may hold. */
    public Layouts layouts() {
        return new Layouts(slots.depths(), slots.perChannel(), mirrored());
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
