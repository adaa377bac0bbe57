package sledwright.rules.stock;

import java.util.List;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.rules.Order;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: no lot arrives later than the request allows. */
public final class LeadTime extends Rule<Order> {

    public static final String ID = "lead-time";

    public LeadTime() {
        super(ID, "No lot arrives later than the request allows.");
    }

    public static boolean allows(Lot lot, Limits limits) {
        return limits.leadDays().isEmpty() || lot.leadDays() <= limits.leadDays().getAsInt();
    }

    @Override
    public List<Violation> judge(Order order) {
        Limits limits = order.request().limit();
        return order.picks().stream().filter(pick -> !allows(pick.lot(), limits))
                .map(pick -> broken(pick.sku(), "Lot %s of %s arrives in %s; the request allows %d.", pick.lot().lot(),
                        pick.sku(), Numbers.counted(pick.lot().leadDays(), "day"), limits.leadDays().getAsInt()))
                .toList();
    }
}
