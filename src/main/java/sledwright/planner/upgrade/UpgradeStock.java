package sledwright.planner.upgrade;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sledwright.domain.Catalog;
import sledwright.domain.Labour;
import sledwright.domain.Lot;
import sledwright.domain.Lot.PriceBreak;
import sledwright.domain.Objective;
import sledwright.domain.Request;

/**
 * The shop's stock with the parts of installed machines in it, priced so that what an order costs is what the customer spends.
 *
 * <p>Who leaves a part in forgoes its credit, so an installed part costs that. All credits together, which would be due were
 * everything pulled, come off the price of the platform, which always stays. A module that is put in carries its labour in its price,
 * since one that stays costs none.
 */
final class UpgradeStock {

    private UpgradeStock() {
    }

    static Catalog of(Catalog shop, Request request, Installed installed) {
        Labour labour = shop.labour();
        Map<String, List<Lot>> lots = new HashMap<>(shop.lots());
        shop.modules().forEach(module -> lots.computeIfPresent(module.sku(),
                (sku, offers) -> offers.stream().map(lot -> dearer(lot, labour.perModule())).toList()));
        request.onHand().forEach((sku, units) -> {
            if (units > 0) {
                add(lots, Lot.own(sku, Lot.ON_HAND, units, shop.module(sku).isPresent() ? labour.perModule() : 0));
            }
        });
        String platform = installed.build().platform().sku();
        long pullable = installed.creditOfMachine() - installed.credit(platform);
        installed.build().partCounts().keySet().forEach(sku -> add(lots, Lot.own(sku, Lot.INSTALLED, installed.units(sku),
                sku.equals(platform) ? -pullable : installed.credit(sku))));
        return shop.with(lots, new Labour(labour.perMachine(), 0));
    }

    private static Lot dearer(Lot lot, long each) {
        return lot.with(lot.available(),
                lot.breaks().stream().map(step -> new PriceBreak(step.minQuantity(), step.unitPrice() + each, step.unitCost())).toList());
    }

    private static void add(Map<String, List<Lot>> lots, Lot own) {
        List<Lot> all = new ArrayList<>(List.of(own));
        all.addAll(lots.getOrDefault(own.sku(), List.of()));
        lots.put(own.sku(), all);
    }

    /** The request that the search answers from that stock. */
    static Request asked(Request request, Installed installed) {
        return request.withPlatforms(Set.of(installed.build().platform().sku())).withOnHand(Map.of()).withObjective(Objective.CHEAPEST)
                .withAlternatives(1, request.step());
    }
}
