package sledwright.planner;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.BiPredicate;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.domain.Stock;
import sledwright.metrics.CheapestDraw;
import sledwright.rules.Order;
import sledwright.rules.stock.AcceptedCondition;
import sledwright.rules.stock.LeadTime;

/**
 * The parts of given machines, drawn from stock for the least price.
 *
 * @param complete whether the lots hold every unit; otherwise the order draws what there is
 */
public record StockDraw(Order order, boolean complete) {

    /** Which lots a part may come from, the strictest first: a lot that the request refuses only serves where no other can. */
    private static final List<BiPredicate<Lot, Limits>> CONCESSIONS = List.of(
            (lot, limits) -> LeadTime.allows(lot, limits) && AcceptedCondition.allows(lot, limits),
            (lot, limits) -> AcceptedCondition.allows(lot, limits),
            (lot, limits) -> LeadTime.allows(lot, limits),
            (lot, limits) -> true);

    /**
     * Draws every part by itself. Where the request's lead time or conditions leave too few units, refused lots serve too, and the
     * order breaks those rules; where all lots together hold too few, it draws as many units as they give.
     */
    public static StockDraw of(List<Build> machines, Request request, Catalog catalog) {
        Stock stock = Stock.of(catalog, request);
        List<Pick> picks = new ArrayList<>();
        boolean complete = true;
        for (Map.Entry<String, Integer> need : Order.of(machines, List.of(), request, catalog).needed().entrySet()) {
            List<Pick> drawn = drawn(stock.lots(need.getKey()), need.getValue(), request.limit());
            complete &= drawn.stream().mapToInt(Pick::quantity).sum() == need.getValue();
            picks.addAll(drawn);
        }
        return new StockDraw(Order.of(machines, picks, request, catalog), complete);
    }

    private static List<Pick> drawn(List<Lot> lots, int units, Limits limits) {
        for (BiPredicate<Lot, Limits> concession : CONCESSIONS) {
            List<Pick> picks = CheapestDraw.picks(lots.stream().filter(lot -> concession.test(lot, limits)).toList(), units);
            if (picks != null) {
                return picks;
            }
        }
        return CheapestDraw.picks(lots, CheapestDraw.most(CheapestDraw.prices(lots, units)));
    }
}
