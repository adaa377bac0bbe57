package sledwright.generator.draw;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import sledwright.domain.MemoryModule;
import sledwright.generator.shape.GroupKind;

/**
 * A way to draw the modules of some groups for all machines: a tree whose leaves take units of alike part numbers that
 * also agree in watts. Watts are in millionths.
 */
public final class Draw {

    /** Modules that may stand for each other in a slot: alike, and the same to the rank limit. */
    public record Alike(GroupKind group, MemoryModule.Kind kind) {
    }

    /**
     * Units of part numbers that only their lots distinguish.
     *
     * @param alike      what they are to the rules
     * @param units      over all machines
     * @param microwatts of one unit
     * @param everywhere whether every machine must get at least one of them
     */
    public record Share(Alike alike, List<MemoryModule> modules, int units, long microwatts, boolean everywhere) {

        /** Units that go to any machine, once those that every machine must get are dealt. */
        int free(int machines) {
            return everywhere ? units - machines : units;
        }
    }

    /**
     * How the watts of a draw fall on the machines.
     *
     * @param total    watts of all units
     * @param lightest watts that each machine has at least
     * @param heaviest watts of the heaviest machine when each kind is dealt by itself
     * @param range    by how much dealing the kinds together, or a draw that this one stands for, can make that less
     * @param uneven   kinds in which units of unequal watts meet, so that machines may differ
     */
    public record Load(long total, long lightest, long heaviest, long range, int uneven) {

        static final Load NONE = new Load(0, 0, 0, 0, 0);

        Load plus(Load other) {
            return new Load(total + other.total, lightest + other.lightest, heaviest + other.heaviest, range + other.range,
                    uneven + other.uneven);
        }
    }

    private static final int BYTES_OF_SUM = 100;
    private static final long BYTES = 200;
    private static final long BYTES_OF_LIST = 40;

    public static final Draw NOTHING = new Draw(0, Load.NONE, null, null, null);

    private final long price;
    private final Load load;
    private final Draw left;
    private final Draw right;
    private final Share share;
    private final int bytesOfSum;

    private Draw(long price, Load load, Draw left, Draw right, Share share) {
        this.price = price;
        this.load = load;
        this.left = left;
        this.right = right;
        this.share = share;
        bytesOfSum = left == null ? 0 : BYTES_OF_SUM + left.bytesOfSum;
    }

    static Draw of(Share share, long price) {
        return new Draw(price, Load.NONE, null, null, share);
    }

    /** Both draws together. */
    public Draw plus(Draw other) {
        if (this == NOTHING) {
            return other;
        }
        return other == NOTHING ? this : new Draw(price + other.price, load.plus(other.load), this, other, null);
    }

    /** The same draw, once it is known how its watts fall. */
    Draw with(Load fallen) {
        return new Draw(price, fallen, left, right, share);
    }

    /** The same draw at the price of drawing all its shares together. */
    Draw priced(long together) {
        return new Draw(together, load, left, right, share);
    }

    /** About how many bytes the draw takes beside the draws that it adds up. */
    public long bytesOfSum() {
        return bytesOfSum;
    }

    /** About how many bytes such a list takes. */
    static long bytes(List<Draw> draws) {
        return BYTES_OF_LIST + draws.stream().mapToLong(draw -> BYTES + draw.bytesOfSum()).sum();
    }

    /** Minor units. */
    public long price() {
        return price;
    }

    public Load load() {
        return load;
    }

    /** Whether all machines get the same watts. */
    boolean even() {
        return load.uneven == 0;
    }

    public List<Share> shares() {
        List<Share> shares = new ArrayList<>();
        visit(shares::add);
        return shares;
    }

    void visit(Consumer<Share> visitor) {
        if (share != null) {
            visitor.accept(share);
        }
        if (left != null) {
            left.visit(visitor);
            right.visit(visitor);
        }
    }
}
