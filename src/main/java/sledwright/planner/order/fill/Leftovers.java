package sledwright.planner.order.fill;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToLongFunction;
import java.util.stream.Collectors;
import sledwright.domain.Lot;
import sledwright.domain.Lot.PriceBreak;
import sledwright.planner.order.market.Bay;
import sledwright.planner.order.market.Draws;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.OfferedLot;
import sledwright.planner.order.market.ScaledMoney;
import sledwright.planner.order.relax.Pricer;

/**
 * What an order in the making leaves of the stock, as offers for a further machine.
 *
 * @param left by part, unscaled
 */
record Leftovers(Tally tally, Map<Integer, List<Lot>> left) {

    /** What is left of each part's lots that all of these pools accept. */
    static Map<Integer, List<Lot>> of(Tally tally, Set<Integer> pools) {
        Market market = tally.market();
        Map<Integer, List<Lot>> left = new HashMap<>();
        for (int part = 0; part < market.parts(); part++) {
            Map<Lot, Integer> taken = tally.draws().taken(part, tally.need());
            List<Lot> lots = new ArrayList<>();
            for (OfferedLot source : market.sources(part)) {
                if (tally.draws().isOpen(source) && pools.stream().allMatch(pool -> source.pools()[pool])) {
                    Lot rest = rest(source.lot(), taken.getOrDefault(source.lot(), 0));
                    if (rest != null) {
                        lots.add(rest);
                    }
                }
            }
            if (!lots.isEmpty()) {
                left.put(part, lots);
            }
        }
        return left;
    }

    /** What a place in a kind of enclosure takes for some machines that are still missing. */
    ToLongFunction<Bay> places(int missing) {
        Map<Bay, Long> places = new HashMap<>();
        return bay -> places.computeIfAbsent(bay, some -> place(some, missing));
    }

    Pricer.Offers offers(ToLongFunction<Bay> places) {
        return variant -> {
            long place = variant.bay() == null ? 0 : places.applyAsLong(variant.bay());
            Map<String, List<Lot>> offers = new HashMap<>();
            left.forEach((part, lots) -> {
                String sku = tally.market().sku(part);
                long more = variant.platforms().contains(sku) ? place : 0;
                if (place < Draws.IMPOSSIBLE || more == 0) {
                    offers.put(sku, lots.stream().map(lot -> scaled(lot, more)).toList());
                }
            });
            return offers;
        };
    }

    /** What is left of a lot once units are taken, at the prices that further units bring; null: nothing. */
    private static Lot rest(Lot lot, int taken) {
        if (taken == 0) {
            return lot;
        }
        int left = lot.available() - taken;
        if (left <= 0) {
            return null;
        }
        List<PriceBreak> prices = lot.breaks().stream().filter(step -> step.minQuantity() > taken + 1)
                .map(step -> new PriceBreak(step.minQuantity() - taken, step.unitPrice(), step.unitCost())).collect(Collectors.toList());
        PriceBreak now = lot.breakFor(taken + 1);
        prices.add(new PriceBreak(1, now.unitPrice(), now.unitCost()));
        return lot.with(left, prices);
    }

    private static Lot scaled(Lot lot, long more) {
        return lot.withPrices(price -> price * ScaledMoney.ONE + more);
    }

    /** What a place in an enclosure takes: nothing where one has a bay free, else its share of a new one. */
    private long place(Bay bay, int missing) {
        List<List<Integer>> packed = Packing.pack(tally.loads(bay), bay);
        if (packed.stream().anyMatch(some -> some.size() < bay.bays())) {
            return 0;
        }
        long enclosure = cheapest(bay.enclosure().sku());
        long supply = cheapest(bay.supply().sku());
        return enclosure >= Draws.IMPOSSIBLE || supply >= Draws.IMPOSSIBLE ? Draws.IMPOSSIBLE
                : (enclosure + supply * bay.supply().count()) / Math.max(1, Math.min(bay.bays(), missing));
    }

    private long cheapest(String sku) {
        return left.getOrDefault(tally.market().index().get(sku), List.of()).stream().flatMap(lot -> lot.breaks().stream())
                .mapToLong(step -> step.unitPrice() * ScaledMoney.ONE).min().orElse(Draws.IMPOSSIBLE);
    }
}
