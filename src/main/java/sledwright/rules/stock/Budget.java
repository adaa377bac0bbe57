package sledwright.rules.stock;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import sledwright.domain.Limits;
import sledwright.domain.TaxedPrice;
import sledwright.rules.Order;
import sledwright.rules.OrderRule;
import sledwright.rules.Violation;

/** {@value #ID}: all machines of the request together cost no more than its limit. */
public final class Budget extends OrderRule {

    public static final String ID = "budget";

    public Budget() {
        super(ID, "All machines of the request together cost no more than its limit.", "limit.price", "limit.price_with_tax");
    }

    /** Whether a price in minor units is within the limit. */
    public static boolean allows(Limits limits, long price) {
        return limits.price().isEmpty() || price <= limits.price().getAsLong();
    }

    @Override
    public Limits settled(Limits limits) {
        return limits.withPrice(OptionalLong.empty());
    }

    @Override
    public List<Violation> judge(Order order) {
        Limits limits = order.request().limit();
        long price = order.price().total();
        if (allows(limits, price)) {
            return List.of();
        }
        Optional<TaxedPrice> taxed = limits.taxed().filter(most -> most.gross(price) > most.most());
        if (taxed.isPresent()) {
            return List.of(broken("", "The price with %s is %s; the request allows %s.", taxed.get().taxName(),
                    order.words(taxed.get().gross(price)), order.words(taxed.get().most())));
        }
        return List.of(broken("", "The price is %s; the request allows %s.",
                order.words(price), order.words(limits.price().getAsLong())));
    }
}
