package sledwright.explain.conflict;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import sledwright.domain.Lot;
import sledwright.domain.Pick;
import sledwright.domain.Stock;
import sledwright.explain.ask.Oracle;
import sledwright.explain.ask.WhatIf;
import sledwright.metrics.CheapestDraw;
import sledwright.rules.Order;
import sledwright.rules.Rulebook;
import sledwright.rules.stock.InStock;
import sledwright.words.Numbers;
import sledwright.words.Sentences;

/** The circumstance that lots hold no more units than they do. */
final class StockDemand {

    private StockDemand() {
    }

    static Stream<Demand> of() {
        return Stream.of(Demand.of(InStock.STOCK, "", "what is in stock", WhatIf::withoutStock, StockDemand::nearest));
    }

    private static Concession nearest(WhatIf terms, Oracle oracle) {
        Order order = oracle.cheapest(terms).orElseThrow();
        Stock stock = Stock.of(oracle.catalog(), terms.request());
        Map<String, int[]> missing = shortages(order, stock);
        if (missing.isEmpty()) {
            return cheapLots(terms, order, stock);
        }
        String reach = "a build needs " + Sentences.list(missing.entrySet().stream().map(entry -> "%s of %s (%s in stock)".formatted(
                Numbers.counted(entry.getValue()[0], "unit"), entry.getKey(), entry.getValue()[1])).toList());
        String advice = "get " + Sentences.list(missing.entrySet().stream().map(entry -> "%s of %s".formatted(
                Numbers.counted(entry.getValue()[0] - entry.getValue()[1], "more unit"), entry.getKey())).toList());
        return new Concession(terms, "", reach, advice);
    }

    /** The stock has units enough, but not at the price: what the lots lack that the order takes. */
    private static Concession cheapLots(WhatIf terms, Order order, Stock stock) {
        List<String> reach = new ArrayList<>();
        List<String> advice = new ArrayList<>();
        for (Pick pick : order.picks()) {
            int given = stock.lots(pick.sku()).stream()
                    .filter(lot -> lot.lot().equals(pick.lot().lot()) && lot.onHand() == pick.lot().onHand())
                    .mapToInt(Lot::available).sum();
            if (given < pick.quantity()) {
                reach.add("%s of %s from lot %s (%s there)".formatted(
                        Numbers.counted(pick.quantity(), "unit"), pick.sku(), pick.lot().lot(), given));
                advice.add("%s of %s at the price of lot %s".formatted(
                        Numbers.counted(pick.quantity() - given, "more unit"), pick.sku(), pick.lot().lot()));
            }
        }
        return new Concession(terms, "", "a build needs " + Sentences.list(reach), "get " + Sentences.list(advice));
    }

    /** Sku -> units needed, units that the real lots give. */
    private static Map<String, int[]> shortages(Order order, Stock stock) {
        Map<String, int[]> missing = new TreeMap<>();
        order.needed().forEach((sku, units) -> {
            List<Lot> lots = stock.lots(sku).stream().filter(lot -> Rulebook.accepts(lot, order.request().limit())).toList();
            int given = CheapestDraw.most(CheapestDraw.prices(lots, units));
            if (given < units) {
                missing.put(sku, new int[] {units, given});
            }
        });
        return missing;
    }
}
