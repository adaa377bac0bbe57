package sledwright.domain;

import java.util.OptionalLong;

/**
 * Orders of one kind that a shop expects. Amounts are minor units of the currency, for one machine.
 *
 * @param name     unique within the plan
 * @param request  what each machine is asked for; its machines are those of one order
 * @param margin   what a machine earns beyond the cost of its cheapest build; empty where the accepted price is given
 * @param accepted the price that the customer pays; empty where the margin is given
 * @param loss     what it costs to turn a machine away
 */
public record DemandClass(String name, Request request, OrdersByMonth orders, OptionalLong margin, OptionalLong accepted, long loss) {

    public DemandClass {
        if (margin.isPresent() == accepted.isPresent()) {
            throw new IllegalArgumentException("class %s needs either a margin or an accepted price".formatted(name));
        }
    }

    /** Machines of one order. */
    public int machines() {
        return request.machines();
    }
}
