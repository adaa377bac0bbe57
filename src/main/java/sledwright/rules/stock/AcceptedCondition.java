package sledwright.rules.stock;

import java.util.Set;
import java.util.stream.Collectors;
import sledwright.domain.Condition;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.rules.LotRule;
import sledwright.rules.Violation;

/** {@value #ID}: every lot is in a condition that the customer accepts; the customer's own parts always are. */
public final class AcceptedCondition extends LotRule {

    public static final String ID = "condition";

    public AcceptedCondition() {
        super(ID, "Every lot is in a condition that the request accepts.", "limit.conditions");
    }

    public static boolean allows(Lot lot, Limits limits) {
        return lot.onHand() || limits.conditions().isEmpty() || limits.conditions().contains(lot.condition());
    }

    @Override
    public Limits settled(Limits limits) {
        return limits.withConditions(Set.of());
    }

    @Override
    public boolean accepts(Lot lot, Limits limits) {
        return allows(lot, limits);
    }

    @Override
    protected Violation breach(Lot lot, Limits limits) {
        return broken(lot.sku(), "Lot %s of %s is %s; the request accepts %s.", lot.lot(), lot.sku(), lot.condition(),
                limits.conditions().stream().sorted().map(Condition::label).collect(Collectors.joining(", ")));
    }
}
