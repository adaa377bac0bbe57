package sledwright.generator.draw;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/** Compares draws of unequal watts without dealing them. */
public final class Hands {

    /** Where the units of a kind and weight are counted: each kind's columns in a row, the heaviest first. */
    private final Map<Suit, Integer> columns = new HashMap<>();
    /** For each column whether it is the last of its kind. */
    private final boolean[] last;
    private final Map<List<Integer>, List<int[]>> kept = new HashMap<>();

    /** Units of one kind; a part number that every machine must get stands apart, since it is not free to move. */
    private record Fixed(Draw.Alike alike, String sku) {
    }

    private record Suit(Fixed fixed, long microwatts) {

        static Suit of(Draw.Share share) {
            return new Suit(new Fixed(share.alike(), share.everywhere() ? share.modules().get(0).sku() : ""), share.microwatts());
        }
    }

    /** @param draws all that will be compared */
    public Hands(List<Draw> draws) {
        Map<Fixed, TreeSet<Long>> weights = new LinkedHashMap<>();
        draws.forEach(draw -> draw.visit(share -> {
            Suit suit = Suit.of(share);
            weights.computeIfAbsent(suit.fixed, fixed -> new TreeSet<>(Comparator.reverseOrder())).add(suit.microwatts);
        }));
        List<Boolean> ends = new ArrayList<>();
        weights.forEach((fixed, heaviestFirst) -> heaviestFirst.forEach(microwatts -> {
            columns.put(new Suit(fixed, microwatts), columns.size());
            ends.add(microwatts.equals(heaviestFirst.last()));
        }));
        last = new boolean[ends.size()];
        for (int i = 0; i < last.length; i++) {
            last[i] = ends.get(i);
        }
    }

    /**
     * Keeps a draw, unless one that was kept before has of every kind as many units and never more of the heavier ones.
     *
     * @return whether it was kept
     */
    boolean keep(Draw draw) {
        int[] heavy = heavyUnits(draw);
        List<int[]> alike = kept.computeIfAbsent(units(heavy), of -> new ArrayList<>());
        for (int[] other : alike) {
            if (isLighterOrEqual(other, heavy)) {
                return false;
            }
        }
        alike.add(heavy);
        return true;
    }

    /** For each column the units of its kind that are as heavy or heavier. */
    private int[] heavyUnits(Draw draw) {
        int[] units = new int[last.length];
        draw.visit(share -> units[columns.get(Suit.of(share))] += share.units());
        for (int i = 1; i < units.length; i++) {
            units[i] += last[i - 1] ? 0 : units[i - 1];
        }
        return units;
    }

    /** The units of each kind. */
    private List<Integer> units(int[] heavy) {
        List<Integer> units = new ArrayList<>();
        for (int i = 0; i < heavy.length; i++) {
            if (last[i]) {
                units.add(heavy[i]);
            }
        }
        return units;
    }

    private static boolean isLighterOrEqual(int[] one, int[] other) {
        for (int i = 0; i < one.length; i++) {
            if (one[i] > other[i]) {
                return false;
            }
        }
        return true;
    }
}
