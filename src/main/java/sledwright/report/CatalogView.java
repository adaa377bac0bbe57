package sledwright.report;

import java.time.LocalDate;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.Lot;
import sledwright.domain.Part;
import sledwright.domain.Supply;

/**
 * What a catalogue holds.
 *
 * @param currency ISO 4217
 * @param counts   what is counted -> how many
 * @param unsold   part numbers without any offer
 */
public record CatalogView(String name, String currency, LocalDate pricedOn, Map<String, Integer> counts, List<String> unsold) {

    public static CatalogView of(Catalog catalog) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        counts.put("platforms", catalog.platforms().size());
        counts.put("processors", catalog.processors().size());
        counts.put("memory modules", catalog.modules().size());
        counts.put("cooling kits", ofKind(catalog, CoolingKit.class));
        counts.put("power supplies", ofKind(catalog, Supply.class));
        List<Lot> lots = catalog.parts().stream().map(part -> catalog.lots(part.sku())).flatMap(Collection::stream).toList();
        counts.put("lots", lots.size());
        counts.put("units in stock", lots.stream().mapToInt(Lot::available).sum());
        List<String> unsold = catalog.parts().stream().map(Part::sku).filter(sku -> catalog.lots(sku).isEmpty()).sorted().toList();
        return new CatalogView(catalog.name(), catalog.currency().getCurrencyCode(), catalog.pricedOn(), counts, unsold);
    }

    private static int ofKind(Catalog catalog, Class<? extends Part> kind) {
        return (int) catalog.parts().stream().filter(kind::isInstance).count();
    }
}
