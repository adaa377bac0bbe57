package sledwright.rules;

import java.util.List;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.Pick;

/** A rule that a lot keeps or breaks by itself, however many units of it are taken. */
public abstract class LotRule extends OrderRule {

    protected LotRule(String id, String law, String... answersTo) {
        super(id, law, answersTo);
    }

    /** Whether units of the lot may be taken. */
    public abstract boolean accepts(Lot lot, Limits limits);

    /** What is to be said of a lot that is not accepted. */
    protected abstract Violation breach(Lot lot, Limits limits);

    @Override
    public final List<Violation> judge(Order order) {
        Limits limits = order.request().limit();
        return order.picks().stream().map(Pick::lot).filter(lot -> !accepts(lot, limits)).map(lot -> breach(lot, limits)).toList();
    }
}
