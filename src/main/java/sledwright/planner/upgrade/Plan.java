package sledwright.planner.upgrade;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import sledwright.domain.Lot;
import sledwright.domain.Pick;
import sledwright.rules.Order;

/**
 * A way to reach the target.
 *
 * @param order    the machines as they then stand, and where every part comes from; an installed part from the lot {@link Lot#INSTALLED}.
 *                 What its lots ask are the shop's prices; installed parts are free
 * @param refits   what is done at the bench
 * @param pulled   sku -> units that leave the machines
 * @param putIn  what labour is paid for
 */
public record Plan(Order order, Spend spend, List<Refit> refits, SortedMap<String, Integer> pulled, PutIn putIn) {

    public Plan {
        refits = List.copyOf(refits);
        pulled = Collections.unmodifiableSortedMap(new TreeMap<>(pulled));
    }

    /** Whether any machine is worked on: parts come or go, or drives that stay are made a volume of another level. */
    public boolean changesAnything() {
        return refits.stream().anyMatch(Refit::changesAnything) || !pulled.isEmpty() || !added().isEmpty();
    }

    /** What does not come out of the machines themselves. */
    public List<Pick> added() {
        return order.picks().stream().filter(pick -> !pick.lot().lot().equals(Lot.INSTALLED)).toList();
    }
}
