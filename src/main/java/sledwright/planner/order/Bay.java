package sledwright.planner.order;

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
record Bay(int id, Enclosure enclosure, Supply supply, int pool, Limits site, long capacity) {

    static final long MICRO = 1_000_000;

    int bays() {
        return enclosure.bays();
    }
}
