package sledwright.explain.audit;

import java.util.List;
import sledwright.catalog.PlacedCatalog;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.Platform;

/** A platform that cannot be bought, or none of whose heat sink kits can. */
final class UnsoldPlatforms implements Audit.Check {

    @Override
    public String id() {
        return "unsold-platform";
    }

    @Override
    public List<Warning> look(PlacedCatalog placed) {
        Catalog catalog = placed.catalog();
        return catalog.platforms().stream().filter(platform -> missing(platform, catalog) != null)
                .map(platform -> new Warning(id(), placed.parts().get(platform.sku()), missing(platform, catalog))).toList();
    }

    private static String missing(Platform platform, Catalog catalog) {
        if (catalog.lots(platform.sku()).isEmpty()) {
            return "platform %s has no offer, so no machine of it can be sold.".formatted(platform.sku());
        }
        boolean cooled = platform.cooling().stream().map(CoolingKit::sku).anyMatch(sku -> !catalog.lots(sku).isEmpty());
        return cooled ? null : "no heat sink kit of platform %s has an offer, so no machine of it can be sold.".formatted(platform.sku());
    }
}
