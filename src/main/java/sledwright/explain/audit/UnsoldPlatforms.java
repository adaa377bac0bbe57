package sledwright.explain.audit;

import java.util.List;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.Platform;

/** A platform that cannot be bought, or none of whose heat sink kits can. */
final class UnsoldPlatforms implements PlatformCheck {

    @Override
    public List<String> messages(Platform platform, Catalog catalog) {
        if (catalog.lots(platform.sku()).isEmpty()) {
            return List.of("platform %s has no offer, so no machine of it can be sold.".formatted(platform.sku()));
        }
        boolean cooled = platform.cooling().stream().map(CoolingKit::sku).anyMatch(sku -> !catalog.lots(sku).isEmpty());
        return cooled ? List.of()
                : List.of("no heat sink kit of platform %s has an offer, so no machine of it can be sold.".formatted(platform.sku()));
    }
}
