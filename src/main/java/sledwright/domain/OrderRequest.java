package sledwright.domain;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * Lines of machines that draw on one stock.
 *
 * @param lines            at least one, each of another name
 * @param suppliersMax     most suppliers that may deliver something; empty: any number
 * @param deliveryCharge   what each supplier that delivers something adds to the price, minor units
 * @param modulePartCharge what each further part number of memory module in one machine counts against its build, minor units;
 *                         0: no wish for one
 * @param onHand           sku -> units that the customer already has, shared by all lines
 */
public record OrderRequest(String name, List<OrderLine> lines, OptionalInt suppliersMax, long deliveryCharge,
                           long modulePartCharge, Map<String, Integer> onHand) {

    public OrderRequest {
        lines = List.copyOf(lines);
        onHand = Map.copyOf(onHand);
        if (lines.isEmpty() || lines.stream().map(OrderLine::name).distinct().count() != lines.size()) {
            throw new IllegalArgumentException("order %s needs lines, each of another name".formatted(name));
        }
    }

    /** The same lines, whoever delivers. */
    public OrderRequest withSuppliersMax(OptionalInt most) {
        return new OrderRequest(name, lines, most, deliveryCharge, modulePartCharge, onHand);
    }

    /** The same order by another name. */
    public OrderRequest withName(String other) {
        return new OrderRequest(other, lines, suppliersMax, deliveryCharge, modulePartCharge, onHand);
    }

    /** The same order of other lines. */
    public OrderRequest withLines(List<OrderLine> others) {
        return new OrderRequest(name, others, suppliersMax, deliveryCharge, modulePartCharge, onHand);
    }

    /** Machines of all lines. */
    public int machines() {
        return lines.stream().mapToInt(OrderLine::machines).sum();
    }
}
