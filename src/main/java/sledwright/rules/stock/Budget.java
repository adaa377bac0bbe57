package sledwright.rules.stock;

import java.util.List;
import sledwright.domain.Limits;
import sledwright.rules.Order;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: all machines of the request together cost no more than its limit. */
public final class Budget extends Rule<Order> {

    public static final String ID = "budget";

    public Budget() {
        super(ID, "All machines of the request together cost no more than its limit.");
    }

    /** Whether a price in minor units is within the limit. */
    public static boolean allows(Limits limits, long price) {
        return limits.price().isEmpty() || price <= limits.price().getAsLong();
    }

    @Override
    public List<Violation> judge(Order order) {
        Limits limits = order.request().limit();
        long price = order.price().total();
        return allows(limits, price) ? List.of() : List.of(broken("", "The price is %s; the request allows %s.",
                order.words(price), order.words(limits.price().getAsLong())));
    }
}
