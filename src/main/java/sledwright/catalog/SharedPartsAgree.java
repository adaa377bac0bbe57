package sledwright.catalog;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import sledwright.domain.CoolingKit;
import sledwright.domain.Supply;
import sledwright.input.Faults;
import sledwright.input.Located;

/** A kit or supply that stands in several platforms or enclosures has one rating; what it covers and how many are fitted may differ. */
final class SharedPartsAgree implements CatalogCheck {

    @Override
    public void check(RawCatalog raw, Faults faults) {
        Map<String, Located<CoolingKit>> kits = new HashMap<>();
        Map<String, Located<Supply>> supplies = new HashMap<>();
        for (PlatformFile file : raw.platforms()) {
            for (Located<CoolingKit> kit : file.kits()) {
                Located<CoolingKit> earlier = kits.putIfAbsent(kit.value().sku(), kit);
                if (earlier != null && earlier.value().maxTdpW() != kit.value().maxTdpW()) {
                    disagree(RawCatalog.KIT, kit.value().sku(), kit, earlier, faults);
                }
            }
        }
        Stream.concat(raw.platforms().stream().map(PlatformFile::supplies), raw.enclosures().stream().map(EnclosureFile::supplies))
                .flatMap(List::stream).forEach(supply -> {
                    Located<Supply> earlier = supplies.putIfAbsent(supply.value().sku(), supply);
                    if (earlier != null && !rating(earlier.value()).equals(rating(supply.value()))) {
                        disagree(RawCatalog.SUPPLY, supply.value().sku(), supply, earlier, faults);
                    }
                });
    }

    private static List<Object> rating(Supply supply) {
        return List.of(supply.watts(), supply.lowLineWatts(), supply.efficiency());
    }

    private static void disagree(String kind, String sku, Located<?> one, Located<?> other, Faults faults) {
        faults.add(one.place(), "%s \"%s\" has another rating than at %s; make them the same, or give it another sku"
                .formatted(kind, sku, other.place()));
    }
}
