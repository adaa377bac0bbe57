package sledwright.planner.upgrade;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sledwright.domain.Catalog;
import sledwright.domain.Labour;
import sledwright.domain.Lot;
import sledwright.domain.Request;

/**
 * The shop's stock with the parts of installed machines in it, priced so that what an order costs is what the customer spends.
 *
 * <p>Who leaves a part in forgoes its credit, so an installed part costs that. All credits together, which would be due were
 * everything pulled, come off the price of the platform, which always stays; no other is sold. A module, drive or card that is
 * put in carries its labour in its price, since one that stays costs none.
 */
final class UpgradeStock {

    private UpgradeStock() {
    }

    /** The stock of a request on its own terms. */
    static Catalog of(Catalog shop, Request request, Installed installed) {
        Labour labour = shop.labour();
        Map<String, List<Lot>> lots = new HashMap<>(shop.lots());
        lots.replaceAll((sku, offers) -> offers.stream().map(lot -> dearer(lot, PutIn.each(labour, shop, sku))).toList());
        request.onHand().forEach((sku, units) -> {
            if (units > 0) {
                add(lots, Lot.own(sku, Lot.ON_HAND, units, PutIn.each(labour, shop, sku)));
            }
        });
        lots.remove(installed.build().platform().sku());
        installed.build().partCounts().keySet().forEach(sku -> add(lots, installed(sku, installed)));
        return shop.with(lots, new Labour(labour.perMachine(), 0));
    }

    /** The same stock where pulled parts fetch what they do for these machines. */
    static Catalog on(Catalog stock, Installed installed) {
        return stock.withEachLot(lot -> lot.lot().equals(Lot.INSTALLED) ? installed(lot.sku(), installed) : lot);
    }

    /** The same without the units on hand of some parts. */
    static Catalog on(Catalog stock, Installed installed, Set<String> withheld) {
        Map<String, List<Lot>> lots = new HashMap<>(on(stock, installed).lots());
        withheld.forEach(sku -> lots.computeIfPresent(sku,
                (same, offers) -> offers.stream().filter(lot -> !lot.lot().equals(Lot.ON_HAND)).toList()));
        return stock.withLots(lots);
    }

    /** The same stock with the platforms free, as searches know no prices below zero. */
    static Catalog withFreePlatform(Catalog stock, Installed installed) {
        String platform = installed.build().platform().sku();
        return stock.withEachLot(lot -> lot.sku().equals(platform) ? Lot.own(platform, Lot.INSTALLED, lot.available(), 0) : lot);
    }

    private static Lot installed(String sku, Installed installed) {
        return Lot.own(sku, Lot.INSTALLED, installed.units(sku),
                sku.equals(installed.build().platform().sku()) ? -installed.creditOfParts() : installed.credit(sku));
    }

    private static Lot dearer(Lot lot, long each) {
        return each == 0 ? lot : lot.withPrices(price -> price + each);
    }

    private static void add(Map<String, List<Lot>> lots, Lot own) {
        List<Lot> all = new ArrayList<>(List.of(own));
        all.addAll(lots.getOrDefault(own.sku(), List.of()));
        lots.put(own.sku(), all);
    }
}
