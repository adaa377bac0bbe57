package sledwright.generator;

import java.util.Optional;
import java.util.Set;
import sledwright.domain.Limits;
import sledwright.domain.ModuleType;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Supply;
import sledwright.generator.draw.Watts;
import sledwright.generator.fitout.Completion;
import sledwright.metrics.Quantity;
import sledwright.rules.Parts;
import sledwright.rules.power.PowerBudget;
import sledwright.rules.power.PowerSupply;
import sledwright.rules.target.PowerLimit;

/**
 * A machine without its memory.
 *
 * @param parts      all that are chosen but the module
 * @param types      module types beside which the site's inlet air is cool enough
 * @param price      all machines with labour and licence but without modules, minor units
 * @param energy     what the electricity of all machines without modules costs where the ranking counts it, else 0; minor units
 * @param microwatts load of one machine without modules, in millionths
 * @param completion drives, cards, extras and enclosures, which price and load count
 */
record Frame(Parts parts, Set<ModuleType> types, Computing computing, long price, long energy, long microwatts, Completion completion) {

    Platform platform() {
        return parts.platform();
    }

    Processor processor() {
        return parts.processor();
    }

    int processors() {
        return parts.fitted();
    }

    Optional<Supply> supply() {
        return parts.supply();
    }

    int cores() {
        return computing.cores();
    }

    double throughput() {
        return computing.throughput();
    }

    /** The same, completed. */
    Frame with(Completion complete, long completeEnergy) {
        return new Frame(parts, types, computing, price + complete.price(), completeEnergy,
                microwatts + complete.fitted().microwatts(), complete);
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

    /** Whether a machine of it may load so much. */
    boolean carries(double loadW, Limits limits) {
        return PowerLimit.allows(limits, loadW) && PowerBudget.allows(platform(), loadW)
                && (supply().isEmpty() || PowerSupply.allows(supply().get(), limits, loadW));
    }

    /** Whether this frame can stand for another wherever that is chosen: no dearer, hotter, slower or narrower in anything. */
    boolean dominates(Frame other, Request request) {
        boolean perCore = request.require().gbPerCore() > 0 || request.require().gbsPerCore() > 0;
        Computing than = other.computing;
        return price <= other.price && computing.worth() >= than.worth() && computing.throughput() >= than.throughput()
                && computing.capacity() >= than.capacity() && microwatts <= other.microwatts
                && (perCore ? computing.cores() == than.cores() : computing.cores() >= than.cores())
                && processor().memoryMts() >= other.processor().memoryMts()
                && mostGb() >= other.mostGb() && types.containsAll(other.types) && supply().equals(other.supply());
    }

    /** The most work that it does with any memory. */
    double mostWork() {
        return Quantity.rounded(computing.capacity());
    }

    private int mostGb() {
        return processor().maxMemoryGb().orElse(Integer.MAX_VALUE);
    }
}
