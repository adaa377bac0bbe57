package sledwright.planner.order.fill;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import sledwright.planner.order.market.Draws;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.ScaledMoney;

/** Who delivers: closes one supplier after the other where that saves its charge, or where there are too many. */
public record Suppliers(Market market) {

    /** Those that deliver something. */
    public Set<Integer> used(Tally tally) {
        return delivered(tally).keySet();
    }

    /** Of each supplier that delivers, the price of its units. */
    private Map<Integer, Long> delivered(Tally tally) {
        Map<Integer, Long> used = new TreeMap<>();
        for (int part = 0; part < market.parts(); part++) {
            int asked = part;
            if (tally.takes(part)) {
                tally.draws().picks(part, tally.need()).values().stream().flatMap(picks -> picks.stream())
                        .forEach(pick -> market.sources(asked).stream().filter(source -> source.lot().equals(pick.lot())
                                && source.supplier() >= 0)
                                .forEach(source -> used.merge(source.supplier(), pick.total(), Long::sum)));
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

    /** The order with as many suppliers as may be, those that deliver most; {@code mend} fills what the others leave open. */
    public Tally fewest(Tally order, UnaryOperator<Tally> mend) {
        if (!tooMany(order)) {
            return order;
        }
        List<Integer> most = delivered(order).entrySet().stream().sorted(Map.Entry.<Integer, Long>comparingByValue().reversed())
                .limit(market.order().suppliersMax().orElseThrow()).map(Map.Entry::getKey).toList();
        return mend.apply(onlyOf(order, most));
    }

    /** What of an order some suppliers can deliver. */
    private Tally onlyOf(Tally order, Collection<Integer> suppliers) {
        boolean[] open = new boolean[market.suppliers().size()];
        suppliers.forEach(supplier -> open[supplier] = true);
        return order.copy(new Draws(market, open));
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
                Tally tried = mend.apply(onlyOf(best, used.stream().filter(other -> other != supplier).toList()));
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
