package sledwright.domain;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Units of lots that are handed out, those of each part lot by lot in the order in which they were put there. */
public final class LotPiles {

    private final Map<String, Deque<Pick>> bySku = new HashMap<>();

    public LotPiles(List<Pick> picks) {
        put(picks);
    }

    /** More units, behind those that are there. */
    public void put(List<Pick> picks) {
        picks.forEach(pick -> bySku.computeIfAbsent(pick.sku(), sku -> new ArrayDeque<>()).add(pick));
    }

    /**
     * Takes units away.
     *
     * @param counts part number -> units, in the order in which they are given back
     * @throws java.util.NoSuchElementException when there are not as many
     */
    public List<Pick> taken(Map<String, Integer> counts) {
        List<Pick> taken = new ArrayList<>();
        counts.forEach((sku, units) -> {
            Deque<Pick> lots = bySku.getOrDefault(sku, new ArrayDeque<>());
            int open = units;
            while (open > 0) {
                Pick first = lots.removeFirst();
                int some = Math.min(open, first.quantity());
                taken.add(new Pick(first.lot(), some));
                open -= some;
                if (first.quantity() > some) {
                    lots.addFirst(new Pick(first.lot(), first.quantity() - some));
                }
            }
        });
        return taken;
    }
}
