package sledwright.rules.stock;

import java.util.List;
import java.util.stream.Collectors;
import sledwright.domain.Condition;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.rules.Order;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: every lot is in a condition that the customer accepts; the customer's own parts always are. */
public final class AcceptedCondition extends Rule<Order> {

    public static final String ID = "condition";

    public AcceptedCondition() {
        super(ID, "Every lot is in a condition that the request accepts.");
    }

    public static boolean allows(Lot lot, Limits limits) {
        return lot.onHand() || limits.conditions().isEmpty() || limits.conditions().contains(lot.condition());
    }

    @Override
    public List<Violation> judge(Order order) {
        Limits limits = order.request().limit();
        return order.picks().stream().filter(pick -> !allows(pick.lot(), limits))
                .map(pick -> broken(pick.sku(), "Lot %s of %s is %s; the request accepts %s.", pick.lot().lot(), pick.sku(),
                        pick.lot().condition(), limits.conditions().stream().sorted().map(Condition::label)
                        .collect(Collectors.joining(", "))))
                .toList();
    }
}
