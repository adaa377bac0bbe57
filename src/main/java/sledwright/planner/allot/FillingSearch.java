package sledwright.planner.allot;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.ToIntFunction;
import java.util.function.ToLongFunction;
import sledwright.domain.Catalog;
import sledwright.domain.Goal;
import sledwright.domain.Labour;
import sledwright.domain.Licence;
import sledwright.domain.Lot;
import sledwright.domain.Lot.PriceBreak;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.rules.Order;

/** Finds ways to keep a promise, by the exact search. */
final class FillingSearch {

    private final Catalog shop;
    private final Search search;
    private final Map<LotName, Lot> lots = new LinkedHashMap<>();

    FillingSearch(Catalog shop) {
        this.shop = shop;
        search = new Search(shop);
        shop.parts().forEach(part -> shop.lots(part.sku()).forEach(lot -> lots.put(LotName.of(lot), lot)));
    }

    /** The shop's lots by name. */
    Map<LotName, Lot> lots() {
        return lots;
    }

    /**
     * What may be taken, and what it counts.
     *
     * @param left   units that may be taken of a lot
     * @param beside what a unit of it counts beside its price
     * @param free   whether only that counts, and no price
     */
    record Offer(ToIntFunction<LotName> left, ToLongFunction<LotName> beside, boolean free) {

        /** At today's prices. */
        static Offer of(ToIntFunction<LotName> left) {
            return new Offer(left, lot -> 0, false);
        }
    }

    /**
     * The way that counts least.
     *
     * @param least no way counts less; infinite where there is none
     */
    record Found(Optional<Filling> filling, double least) {

        static final Found NOTHING = new Found(Optional.empty(), Double.POSITIVE_INFINITY);
    }

    /** @param told whether the machines may hold only what the customer was told of */
    Found find(Promise promise, Offer offer, boolean told, Deadline deadline) {
        Map<String, List<Lot>> offers = new LinkedHashMap<>();
        lots.forEach((name, lot) -> {
            int most = told ? promise.parts().getOrDefault(name.sku(), 0) : Integer.MAX_VALUE;
            Lot offered = promise.offered(lot, Math.min(most, offer.left().applyAsInt(name)));
            if (offered.available() > 0) {
                offers.computeIfAbsent(name.sku(), sku -> new ArrayList<>())
                        .add(priced(offered, offer.beside().applyAsLong(name), offer.free()));
            }
        });
        Request request = offer.free() ? free(promise.request()) : promise.request();
        Catalog offering = shop.with(offers, offer.free() ? new Labour(0, 0) : shop.labour());
        Findings findings = search.on(offering).run(request, deadline);
        if (findings.status() == Status.IMPOSSIBLE) {
            return Found.NOTHING;
        }
        double least = Double.isNaN(findings.bound()) ? 0 : findings.bound();
        return new Found(findings.ranked().stream().findFirst().map(order -> Filling.of(atTodaysPrices(order, promise))), least);
    }

    private static Lot priced(Lot lot, long beside, boolean free) {
        if (beside == 0 && !free) {
            return lot;
        }
        return free ? lot.at(beside) : lot.with(lot.available(), lot.breaks().stream()
                .map(price -> new PriceBreak(price.minQuantity(), price.unitPrice() + beside, OptionalLong.empty())).toList());
    }

    /** Without what the customer pays beside the parts. */
    private static Request free(Request request) {
        return new Request(request.name(), request.machines(), request.require(), request.limit(),
                new Goal(request.objective(), request.worth(), Licence.NONE), request.list(), request.parts());
    }

    /** The same machines, drawn from the lots as they are. */
    private Order atTodaysPrices(Order order, Promise promise) {
        List<Pick> picks = order.picks().stream().map(pick -> pick.lot().onHand() ? pick
                : new Pick(promise.offered(lots.get(LotName.of(pick.lot())), Integer.MAX_VALUE), pick.quantity())).toList();
        return Order.of(order.machines(), picks, promise.request(), shop);
    }
}
