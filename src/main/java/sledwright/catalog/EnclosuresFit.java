package sledwright.catalog;

import java.util.HashMap;
import java.util.Map;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Nearest;

/** An enclosure takes platforms of the catalogue that have no supplies of their own: it feeds them. */
final class EnclosuresFit implements CatalogCheck {

    @Override
    public void check(RawCatalog raw, Faults faults) {
        if (raw.platforms().stream().anyMatch(file -> file.sku().isEmpty())) {
            return;
        }
        Map<String, PlatformFile> platforms = new HashMap<>();
        raw.platforms().forEach(file -> platforms.putIfAbsent(file.sku().orElseThrow().value(), file));
        Map<String, String> kinds = new HashMap<>();
        raw.skuUses().forEach(use -> kinds.putIfAbsent(use.sku(), use.kind()));
        Nearest nearest = new Nearest(platforms.keySet());
        for (EnclosureFile file : raw.enclosures()) {
            for (Field platform : file.takes()) {
                PlatformFile taken = platforms.get(platform.text());
                if (taken == null) {
                    String kind = kinds.get(platform.text());
                    platform.fault("is no platform of this catalogue"
                            + (kind == null ? nearest.hint(platform.text()) : "; it is a " + kind), faults);
                } else if (!taken.supplies().isEmpty()) {
                    platform.fault("has power supplies of its own at %s; an enclosure feeds what it takes"
                            .formatted(taken.supplies().get(0).place()), faults);
                }
            }
        }
    }
}
