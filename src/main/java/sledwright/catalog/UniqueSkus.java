package sledwright.catalog;

import java.util.HashMap;
import java.util.Map;
import sledwright.catalog.RawCatalog.SkuUse;
import sledwright.input.Faults;

/** A sku is one part, over all kinds; only kits and supplies may stand in several platforms and enclosures. */
final class UniqueSkus implements CatalogCheck {

    @Override
    public void check(RawCatalog raw, Faults faults) {
        Map<String, SkuUse> seen = new HashMap<>();
        for (SkuUse use : raw.skuUses()) {
            SkuUse earlier = seen.putIfAbsent(use.sku(), use);
            if (earlier != null && !(use.mayRepeat() && use.kind().equals(earlier.kind()))) {
                faults.add(use.place(), "sku \"%s\" is already a %s at %s".formatted(use.sku(), earlier.kind(), earlier.place()));
            }
        }
    }
}
