package sledwright.planner.order.market;

import sledwright.domain.Enclosure;
import sledwright.domain.Limits;
import sledwright.domain.Supply;

/**
 * A kind of enclosure that sleds may stand in.
 *
 * @param pool     the lots that it and its supplies come from; sleds of stricter lines do not go in
 * @param site     the mains it stands at
 * @param capacity microwatts that its sleds may load together
 */
public record Bay(int id, Enclosure enclosure, Supply supply, int pool, Limits site, long capacity) {

    public static final long MICRO = 1_000_000;

    public int bays() {
        return enclosure.bays();
    }
}
