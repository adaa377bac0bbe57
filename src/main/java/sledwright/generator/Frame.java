package sledwright.generator;

import java.util.Optional;
import java.util.Set;
import sledwright.domain.CoolingKit;
import sledwright.domain.ModuleType;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Supply;
import sledwright.generator.draw.Watts;
import sledwright.generator.fitout.Completion;
import sledwright.metrics.Quantity;

/**
 * A machine without its memory.
 *
 * @param types      module types beside which the site's inlet air is cool enough
 * @param price      all machines with labour and licence but without modules, minor units
 * @param worth      what the customer gives for its cores and throughput beyond the requirement, all machines, minor units
 * @param capacity   what its cores do of the workload where memory feeds them; without a workload its throughput
 * @param energy     what the electricity of all machines without modules costs where the ranking counts it, else 0; minor units
 * @param microwatts load of one machine without modules, in millionths
 * @param completion drives, cards, extras and enclosures, which price and load count
 */
record Frame(Platform platform, Processor processor, int processors, CoolingKit cooling, Optional<Supply> supply,
             Set<ModuleType> types, long price, double worth, long energy, int cores, double throughput, double capacity,
             long microwatts, Completion completion) {

    /** A machine that needs neither drives, cards and extras nor an enclosure and is to do nothing in particular. */
    Frame(Platform platform, Processor processor, int processors, CoolingKit cooling, Optional<Supply> supply,
          Set<ModuleType> types, long price, double worth, long energy, int cores, double throughput, long microwatts) {
        this(platform, processor, processors, cooling, supply, types, price, worth, energy, cores, throughput, throughput,
                microwatts, Completion.NOTHING);
    }

    /** The same, completed. */
    Frame with(Completion complete, long completeEnergy) {
        return new Frame(platform, processor, processors, cooling, supply, types, price + complete.price(), worth, completeEnergy, cores,
                throughput, capacity, microwatts + complete.fitted().microwatts(), complete);
    }

    /** Whether the completion is the one for a machine whose modules load so much. */
    boolean suits(long moduleMicrowatts) {
        long others = microwatts - completion.fitted().microwatts() + moduleMicrowatts;
        return completion.heavierThan() < others && others <= completion.atMost();
    }

    /** Whether machines whose modules load at least so much can have the completion. */
    boolean maySuit(double moduleW) {
        return Watts.of(microwatts - completion.fitted().microwatts()) + moduleW <= Watts.of(completion.atMost()) + 1e-6;
    }

    /** Whether this frame can stand for another wherever that is chosen: no dearer, hotter, slower or narrower in anything. */
    boolean dominates(Frame other, Request request) {
        boolean perCore = request.require().gbPerCore() > 0 || request.require().gbsPerCore() > 0;
        return price <= other.price && worth >= other.worth && throughput >= other.throughput && capacity >= other.capacity
                && microwatts <= other.microwatts
                && (perCore ? cores == other.cores : cores >= other.cores)
                && processor.memoryMts() >= other.processor.memoryMts()
                && mostGb() >= other.mostGb() && types.containsAll(other.types) && supply.equals(other.supply);
    }

    /** The most work that it does with any memory. */
    double mostWork() {
        return Quantity.rounded(capacity);
    }

    private int mostGb() {
        return processor.maxMemoryGb().orElse(Integer.MAX_VALUE);
    }
}
