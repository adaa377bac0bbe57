package sledwright.planner.order.fill;

import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import sledwright.domain.Pick;
import sledwright.planner.order.market.Draws;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.ScaledMoney;

/** Who delivers: closes one supplier after the other where that saves its charge, or where there are too many. */
public final class Suppliers {

    private final Market market;

    public Suppliers(Market market) {
        this.market = market;
    }

    /** Those that deliver something. */
    public Set<Integer> used(Tally tally) {
        Set<Integer> used = new TreeSet<>();
        for (int part = 0; part < market.parts(); part++) {
            int asked = part;
            if (tally.takes(part)) {
                tally.draws().picks(part, tally.need()).values().stream().flatMap(picks -> picks.stream()).map(Pick::lot)
                        .forEach(lot -> market.sources(asked).stream().filter(source -> source.lot().equals(lot) && source.supplier() >= 0)
                                .forEach(source -> used.add(source.supplier())));
            }
        }
        return used;
    }

    /** The cost of an order with what its suppliers charge, scaled. */
    public long cost(Tally tally) {
        return tally.cost() + (market.isSupplierScarce() ? used(tally).size() * market.order().deliveryCharge() * ScaledMoney.ONE : 0);
    }

    public boolean tooMany(Tally tally) {
        return market.order().suppliersMax().isPresent() && used(tally).size() > market.order().suppliersMax().getAsInt();
    }

    /**
     * The order with fewer suppliers where that is cheaper or must be. {@code mend} fills and betters what a closed supplier leaves open.
     */
    public Tally settle(Tally order, UnaryOperator<Tally> mend) {
        Tally best = order;
        while (market.isSupplierScarce()) {
            boolean must = tooMany(best);
            Tally fewer = null;
            Set<Integer> used = used(best);
            for (int supplier : used) {
                boolean[] open = new boolean[market.suppliers().size()];
                used.forEach(some -> open[some] = true);
                open[supplier] = false;
                Tally tried = mend.apply(best.copy(new Draws(market, open)));
                fewer = fewer == null || cost(tried) < cost(fewer) ? tried : fewer;
            }
            if (fewer == null || !must && cost(fewer) >= cost(best)) {
                return best;
            }
            best = fewer;
        }
        return best;
    }
}
