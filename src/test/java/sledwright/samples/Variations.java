package sledwright.samples;

import java.util.List;
import java.util.OptionalLong;
import sledwright.domain.Assortment;
import sledwright.domain.Catalog;
import sledwright.domain.DemandClass;
import sledwright.domain.RestockRequest;
import sledwright.domain.Shop;
import sledwright.domain.Stationery;
import sledwright.domain.SupplierNames;
import sledwright.domain.SupplyOffer;

/** Shops and requests that differ from others in one thing. */
public final class Variations {

    private Variations() {
    }

    /** The same shop with what it puts on its documents. */
    public static Catalog of(Catalog catalog, Stationery own) {
        Shop shop = catalog.shop();
        return of(catalog, new Shop(shop.name(), shop.prices(), shop.throughputFactors(), own, shop.suppliers(), shop.house(), shop.workloads()));
    }

    /** The same shop with what it calls its suppliers; the names of its lots are resolved. */
    public static Catalog of(Catalog catalog, SupplierNames called) {
        Shop shop = catalog.shop();
        return of(catalog, new Shop(shop.name(), shop.prices(), shop.throughputFactors(), shop.stationery(), called, shop.house(), shop.workloads()));
    }

    private static Catalog of(Catalog catalog, Shop shop) {
        return new Catalog(shop, catalog.assortment(), catalog.lots()).withToday(catalog.today());
    }

    /** The same shop with these parts instead. */
    public static Catalog of(Catalog catalog, Assortment other) {
        return new Catalog(catalog.shop(), other, catalog.lots()).withToday(catalog.today());
    }

    public static RestockRequest budget(RestockRequest request, OptionalLong most) {
        return purchases(request, new RestockRequest.Purchases(most, request.offers()));
    }

    public static RestockRequest offers(RestockRequest request, List<SupplyOffer> others) {
        return purchases(request, new RestockRequest.Purchases(request.budget(), others));
    }

    private static RestockRequest purchases(RestockRequest request, RestockRequest.Purchases others) {
        return new RestockRequest(request.name(), request.classes(), request.horizonMonths(), others, request.depreciation(),
                request.serviceLevel(), request.samples());
    }

    public static RestockRequest classes(RestockRequest request, List<DemandClass> others) {
        return new RestockRequest(request.name(), others, request.horizonMonths(), request.purchases(), request.depreciation(),
                request.serviceLevel(), request.samples());
    }
}
