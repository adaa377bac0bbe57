package sledwright.rules.stock;

import sledwright.domain.DeliverBy;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.rules.LotRule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: no lot arrives later than the request allows. */
public final class LeadTime extends LotRule {

    public static final String ID = "lead-time";

    public LeadTime() {
        super(ID, "No lot arrives later than the request allows.", "limit.lead_days", "limit.by");
    }

    public static boolean allows(Lot lot, Limits limits) {
        return limits.mostDays().isEmpty() || lot.leadDays() <= limits.mostDays().getAsInt();
    }

    @Override
    public Limits settled(Limits limits) {
        return limits.waiting();
    }

    @Override
    public boolean accepts(Lot lot, Limits limits) {
        return allows(lot, limits);
    }

    @Override
    protected Violation breach(Lot lot, Limits limits) {
        if (limits.by().filter(by -> by.days() < lot.leadDays()).isPresent()) {
            DeliverBy by = limits.by().get();
            if (lot.lot().equals(Lot.INSTALLED)) {
                return broken(Lot.INSTALLED, "What is installed can be delivered on %s; the request allows %s.", by.arrival(0), by.day());
            }
            return broken(lot.sku(), "Lot %s of %s arrives on %s; the request allows %s.", lot.lot(), lot.sku(),
                    by.arrival(lot.leadDays()), by.day());
        }
        return broken(lot.sku(), "Lot %s of %s arrives in %s; the request allows %s.", lot.lot(), lot.sku(),
                Numbers.counted(lot.leadDays(), "day"), limits.leadDays().getAsInt());
    }
}
