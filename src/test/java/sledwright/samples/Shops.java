package sledwright.samples;

import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import sledwright.domain.Assortment;
import sledwright.domain.Catalog;
import sledwright.domain.Enclosure;
import sledwright.domain.House;
import sledwright.domain.Labour;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.Platform;
import sledwright.domain.PriceBasis;
import sledwright.domain.Processor;
import sledwright.domain.Shop;
import sledwright.domain.Stationery;
import sledwright.domain.SupplierNames;

/** Catalogues of shops that call their suppliers as their offers do, hold themselves to nothing and know no workloads. */
public final class Shops {

    private Shops() {
    }

    /** A shop without enclosures. */
    public static Catalog of(String name, Currency currency, LocalDate pricedOn, Labour labour, Map<String, Double> throughputFactors, List<Platform> platforms,
                             List<Processor> processors, List<MemoryModule> modules, Map<String, List<Lot>> lots) {
        return of(name, currency, pricedOn, labour, throughputFactors, platforms, List.of(), processors, modules, lots);
    }

    /** A shop without drives, cards and extras. */
    public static Catalog of(String name, Currency currency, LocalDate pricedOn, Labour labour, Map<String, Double> throughputFactors, List<Platform> platforms,
                             List<Enclosure> enclosures, List<Processor> processors, List<MemoryModule> modules, Map<String, List<Lot>> lots) {
        return of(name, currency, pricedOn, labour, throughputFactors,
                new Assortment(platforms, enclosures, processors, modules, List.of(), List.of(), List.of()), lots, Stationery.PLAIN);
    }

    /** A shop of any parts. */
    public static Catalog of(String name, Currency currency, LocalDate pricedOn, Labour labour, Map<String, Double> throughputFactors, Assortment assortment,
                             Map<String, List<Lot>> lots, Stationery stationery) {
        return new Catalog(new Shop(name, new PriceBasis(currency, pricedOn, labour), throughputFactors, stationery,
                SupplierNames.AS_WRITTEN, House.OPEN, Map.of()), assortment, lots);
    }
}
