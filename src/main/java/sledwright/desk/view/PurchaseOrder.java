package sledwright.desk.view;

import java.util.List;
import sledwright.restock.RestockPlan.Buy;

/**
 * What a stock plan orders from one supplier.
 *
 * @param supplier as the shop calls it, whatever the list of offers does
 * @param own      whether it is the shop's own shelf, from which the parts are only taken
 */
public record PurchaseOrder(String supplier, boolean own, List<Buy> lines) {

    public PurchaseOrder {
        lines = List.copyOf(lines);
    }

    public int units() {
        return lines.stream().mapToInt(Buy::quantity).sum();
    }

    /** Minor units of the currency. */
    public long total() {
        return lines.stream().mapToLong(Buy::cost).sum();
    }

    /** Days until all of it has arrived. */
    public int days() {
        return lines.stream().mapToInt(line -> line.offer().leadDays()).max().orElse(0);
    }

    /** Whether a line takes all that the supplier offers. */
    public static boolean takesAll(Buy line) {
        return line.quantity() == line.offer().available();
    }
}
