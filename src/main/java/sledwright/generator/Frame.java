package sledwright.generator;

import java.util.Optional;
import java.util.Set;
import sledwright.domain.CoolingKit;
import sledwright.domain.ModuleType;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Supply;

/**
 * A machine without its memory.
 *
 * @param types      module types beside which the site's inlet air is cool enough
 * @param price      all machines with labour and licence but without modules, minor units
 * @param worth      what the customer gives for its cores and throughput beyond the requirement, all machines, minor units
 * @param energy     what the electricity of all machines without modules costs where the ranking counts it, else 0; minor units
 * @param microwatts load of one machine without modules, in millionths
 */
record Frame(Platform platform, Processor processor, int processors, CoolingKit cooling, Optional<Supply> supply,
             Set<ModuleType> types, long price, double worth, long energy, int cores, double throughput, long microwatts) {

    /** Whether this frame can stand for another wherever that is chosen: no dearer, hotter, slower or narrower in anything. */
    boolean dominates(Frame other, Request request) {
        boolean perCore = request.require().gbPerCore() > 0 || request.require().gbsPerCore() > 0;
        return price <= other.price && worth >= other.worth && throughput >= other.throughput && microwatts <= other.microwatts
                && (perCore ? cores == other.cores : cores >= other.cores)
                && processor.memoryMts() >= other.processor.memoryMts()
                && mostGb() >= other.mostGb() && types.containsAll(other.types) && supply.equals(other.supply);
    }

    private int mostGb() {
        return processor.maxMemoryGb().orElse(Integer.MAX_VALUE);
    }
}
