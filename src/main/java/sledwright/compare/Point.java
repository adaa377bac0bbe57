package sledwright.compare;

import sledwright.rules.Order;

/**
 * A build on a curve.
 *
 * @param order  judged valid
 * @param figure of one machine
 * @param price  all machines, minor units
 * @param energy electricity of all machines over all years; 0 where none is counted; minor units
 */
public record Point(Order order, double figure, long price, long energy) {

    public long total() {
        return price + energy;
    }

    /** Minor units. */
    public long cost(Cost cost) {
        return switch (cost) {
            case PRICE -> price;
            case TOTAL -> total();
        };
    }
}
