package sledwright.restock;

import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import sledwright.rules.Order;

/**
 * One way to fill an order of a class.
 *
 * @param needed sku -> units of the whole order
 * @param labour putting it together and its licence, minor units
 */
record Choice(int demandClass, SortedMap<String, Integer> needed, long labour) {

    Choice {
        needed = new TreeMap<>(needed);
    }

    static Choice of(int demandClass, Order order) {
        return new Choice(demandClass, order.needed(), order.price().labour() + order.price().licence());
    }

    /** What the parts come to at given unit prices. */
    double parts(java.util.function.ToDoubleFunction<String> unitPrice) {
        double sum = 0;
        for (Map.Entry<String, Integer> part : needed.entrySet()) {
            sum += unitPrice.applyAsDouble(part.getKey()) * part.getValue();
        }
        return sum;
    }
}
