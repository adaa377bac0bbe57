package sledwright.planner.allot;

import java.util.Map;
import java.util.TreeMap;
import sledwright.domain.Availability;
import sledwright.domain.Lot;
import sledwright.domain.Request;

/**
 * Machines that a customer was promised.
 *
 * @param name    what the promise is called
 * @param request what the customer was told, as a request: at least these figures, within the days that are left, at any cost to the shop
 * @param parts   sku -> units of the shop's that the customer was told of
 * @param kept    units that it keeps today
 * @param pinned  whether these stay as they are, since they have been picked
 */
public record Promise(String name, Request request, Map<String, Integer> parts, Map<LotName, Integer> kept, boolean pinned) {

    public Promise {
        parts = Map.copyOf(parts);
        kept = Map.copyOf(kept);
    }

    /** Maps of promises are asked often, and their names tell them apart. */
    @Override
    public int hashCode() {
        return name.hashCode();
    }

    int machines() {
        return request.machines();
    }

    /** What two promises have in common that may be kept in the same ways. */
    record Kind(Request request, Map<String, Integer> parts, Map<LotName, Integer> kept) {
    }

    Kind kind() {
        return new Kind(request, parts, kept);
    }

    /**
     * A lot as it is offered to the promise. What it keeps comes when it was to come: whoever orders today waits longer.
     *
     * @param left what others leave of it
     */
    public Lot offered(Lot lot, int left) {
        int units = Math.min(lot.available(), Math.max(0, left));
        int own = kept.getOrDefault(LotName.of(lot), 0);
        int most = request.limit().mostDays().orElse(Integer.MAX_VALUE);
        if (own == 0 || lot.leadDays() <= most) {
            return lot.with(units, lot.breaks());
        }
        return new Lot(lot.sku(), lot.lot(), lot.supplier(), lot.condition(),
                new Availability(Math.min(units, own), Math.max(0, most), lot.stock().lastDay()), lot.breaks(), false);
    }

    /** Units by part. */
    static Map<String, Integer> byPart(Map<LotName, Integer> units) {
        Map<String, Integer> parts = new TreeMap<>();
        units.forEach((lot, some) -> parts.merge(lot.sku(), some, Integer::sum));
        return parts;
    }
}
