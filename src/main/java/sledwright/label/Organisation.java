package sledwright.label;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * How the devices of a module are put together: {@code 2Rx4}, {@code 4DRx4} or {@code 2S4Rx4}.
 *
 * <p>In {@code 2S4Rx4} two package ranks hold four logical ranks each: from memory of JESD21-C; trade lists that give
 * {@code 256GB 2S4Rx4} and {@code 512GB 2S8Rx4} bear it out, since no module has eight package ranks of two layers.
 *
 * @param ranks    package ranks
 * @param stacking what a package holds
 * @param layers   logical ranks in a package rank; 1 unless stacked
 * @param width    bits that a device gives
 */
public record Organisation(int ranks, Stacking stacking, int layers, int width) {

    static final Set<Integer> RANKS = Set.of(1, 2, 4, 8);
    static final Set<Integer> LAYERS = Set.of(2, 4, 8);
    static final Set<Integer> WIDTHS = Set.of(4, 8, 16);
    private static final int MOST_LOGICAL_RANKS = 16;

    /** What a package of a rank holds. */
    public enum Stacking {
        /** One die, or several that the label does not speak of. */
        NONE(""),
        /** Dies side by side that load the bus each. */
        DUAL_DIE("D"),
        /** A stack that loads the bus once. */
        THREE_DS("S");

        private final String letter;

        Stacking(String letter) {
            this.letter = letter;
        }

        static Stacking lettered(String letter) {
            return letter.equals("S") ? THREE_DS : letter.equals("D") ? DUAL_DIE : NONE;
        }
    }

    public Organisation {
        if (!possible(ranks, stacking, layers, width)) {
            throw new IllegalArgumentException("no such organisation: " + ranks + stacking.letter + layers + "Rx" + width);
        }
    }

    static boolean possible(int ranks, Stacking stacking, int layers, int width) {
        boolean stacked = stacking == Stacking.THREE_DS;
        return RANKS.contains(ranks) && WIDTHS.contains(width) && (stacked ? LAYERS.contains(layers) : layers == 1)
                && ranks * layers <= MOST_LOGICAL_RANKS;
    }

    /** Every one there is, the plain ones first. */
    static List<Organisation> all() {
        List<Organisation> all = new ArrayList<>();
        for (Stacking stacking : Stacking.values()) {
            for (int ranks : List.of(1, 2, 4, 8)) {
                for (int layers : List.of(1, 2, 4, 8)) {
                    for (int width : List.of(4, 8, 16)) {
                        if (possible(ranks, stacking, layers, width)) {
                            all.add(new Organisation(ranks, stacking, layers, width));
                        }
                    }
                }
            }
        }
        return all;
    }

    boolean stacked() {
        return stacking == Stacking.THREE_DS;
    }

    /** The ranks that the devices make up: what a controller sees when nothing on the module hides any. */
    public int logicalRanks() {
        return ranks * layers;
    }

    /** What one device holds when the module holds {@code capacityGb}, in megabits. */
    double densityMbit(int capacityGb) {
        return capacityGb * 8.0 * 1024 * width / (Generation.DATA_BITS * logicalRanks());
    }

    /** What the module holds when a device holds {@code densityMbit}, in GB. */
    double capacityGb(int densityMbit) {
        return densityMbit / 8.0 / 1024 * Generation.DATA_BITS / width * logicalRanks();
    }

    /** As a label has it. */
    @Override
    public String toString() {
        return ranks + stacking.letter + (stacked() ? layers : "") + "Rx" + width;
    }
}
