package sledwright.planner.upgrade;

import sledwright.rules.Order;

/**
 * Machines bought whole in place of an upgrade.
 *
 * @param credit what the installed machines fetch, minor units
 */
public record Whole(Order order, long credit) {

    /** Minor units. */
    public long spend() {
        return order.price().total() - credit;
    }
}
