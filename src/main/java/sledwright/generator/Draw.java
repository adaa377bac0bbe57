package sledwright.generator;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import sledwright.domain.MemoryModule;

/**
 * A way to draw the modules of some groups for all machines: a tree whose leaves take units of alike part numbers that
 * also agree in watts. Watts are in millionths and over all machines.
 */
final class Draw {

    /**
     * Units of part numbers that only their lots tell apart.
     *
     * @param units      over all machines
     * @param microwatts of one unit
     * @param everywhere whether every machine must get at least one of them
     */
    record Share(List<MemoryModule> modules, int units, long microwatts, boolean everywhere) {

        MemoryModule.Kind kind() {
            return modules.get(0).kind();
        }
    }

    static final Draw NOTHING = new Draw(0, 0, 0, true, null, null, null);

    private final long price;
    private final long microwatts;
    private final long least;
    private final boolean even;
    private final Draw left;
    private final Draw right;
    private final Share share;
    private long heaviest = -1;

    private Draw(long price, long microwatts, long least, boolean even, Draw left, Draw right, Share share) {
        this.price = price;
        this.microwatts = microwatts;
        this.least = least;
        this.even = even;
        this.left = left;
        this.right = right;
        this.share = share;
    }

    static Draw of(Share share, long price) {
        long microwatts = share.microwatts * share.units;
        return new Draw(price, microwatts, microwatts, true, null, null, share);
    }

    /** Both draws together. */
    Draw plus(Draw other) {
        if (this == NOTHING) {
            return other;
        }
        return other == NOTHING ? this
                : new Draw(price + other.price, microwatts + other.microwatts, least + other.least, even && other.even, this, other, null);
    }

    /** The same draw where units of unequal watts meet in one kind, so that machines may differ; {@code least} if all were as light as the lightest can be. */
    Draw uneven(long least) {
        return new Draw(price, microwatts, least, false, left, right, share);
    }

    /** Minor units. */
    long price() {
        return price;
    }

    /** The watts of all units. */
    long microwatts() {
        return microwatts;
    }

    /** The watts if every machine were as light as the lightest can be; {@link #microwatts()} of an even draw. */
    long least() {
        return least;
    }

    /** Whether all machines get the same watts. */
    boolean even() {
        return even;
    }

    /** The watts of the heaviest machine when units are dealt as evenly as can be. */
    long heaviest(int machines) {
        if (even) {
            return microwatts / machines;
        }
        if (heaviest < 0) {
            heaviest = Deal.heaviestMicrowatts(shares(), machines);
        }
        return heaviest;
    }

    List<Share> shares() {
        List<Share> shares = new ArrayList<>();
        visit(shares::add);
        return shares;
    }

    private void visit(Consumer<Share> visitor) {
        if (share != null) {
            visitor.accept(share);
        }
        if (left != null) {
            left.visit(visitor);
            right.visit(visitor);
        }
    }
}
