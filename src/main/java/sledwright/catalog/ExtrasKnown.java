package sledwright.catalog;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Located;
import sledwright.input.Nearest;

/** Risers, and what is called for by what is fitted, are extras of the catalogue. */
final class ExtrasKnown implements CatalogCheck {

    @Override
    public void check(RawCatalog raw, Faults faults) {
        if (!raw.components().extras().whole()) {
            return;
        }
        Set<String> extras = new HashSet<>();
        raw.components().extras().skus().stream().map(Located::value).forEach(extras::add);
        Map<String, String> kinds = new HashMap<>();
        raw.skuUses().forEach(use -> kinds.putIfAbsent(use.sku(), use.kind()));
        Nearest nearest = new Nearest(extras);
        for (PlatformFile file : raw.platforms()) {
            for (Field named : file.extras()) {
                if (!extras.contains(named.text())) {
                    String kind = kinds.get(named.text());
                    named.fault("is no part of extras.csv" + (kind == null ? nearest.hint(named.text()) : "; it is a " + kind), faults);
                }
            }
        }
    }
}
