package sledwright.planner.order.market;

import sledwright.domain.Card;
import sledwright.domain.Drive;
import sledwright.domain.Enclosure;
import sledwright.domain.Extra;
import sledwright.domain.Limits;
import sledwright.domain.MemoryModule;
import sledwright.domain.Part;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Supply;

/**
 * A kind of enclosure that sleds may stand in.
 *
 * @param pool     the lots that it and its supplies come from; sleds of stricter lines do not go in
 * @param site     the mains it stands at
 * @param capacity microwatts that its sleds may load together
 */
public record Bay(int id, Enclosure enclosure, Supply supply, int pool, Limits site, long capacity) {

    /** Microwatts of a kilowatt. */
    public static final double MICRO_OF_KILO = 1e9;

    /** What a unit of a part adds to the load of a machine. */
    public static double watts(Part part) {
        return part instanceof Platform platform ? platform.power().baseW() : part instanceof Processor processor ? processor.tdpW()
                : part instanceof MemoryModule module ? module.powerW() : part instanceof Drive drive ? drive.powerW()
                : part instanceof Card card ? card.powerW() : part instanceof Extra extra ? extra.powerW() : 0;
    }

    public int bays() {
        return enclosure.bays();
    }
}
