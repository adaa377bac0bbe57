package sledwright.desk.view;

import java.time.LocalDate;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.Enclosure;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.Part;
import sledwright.domain.Supply;
import sledwright.explain.audit.Warning;
import sledwright.rules.enclosure.EnclosurePower;

/**
 * What a catalogue holds.
 *
 * @param currency   ISO 4217
 * @param counts     what is counted -> how many
 * @param enclosures what houses sleds
 * @param unsold     part numbers without any offer
 * @param warnings   what is odd about it
 */
public record CatalogView(String name, String currency, LocalDate pricedOn, Map<String, Long> counts, List<Housed> enclosures,
                          List<String> unsold, List<Warning> warnings) {

    /**
     * A sled enclosure.
     *
     * @param takes part numbers of the platforms that go into its bays
     * @param feeds its supply options
     */
    public record Housed(String sku, String name, int bays, List<String> takes, List<Feed> feeds) {
    }

    /**
     * A supply option of an enclosure.
     *
     * @param sledsW watts that it leaves for all sleds together at high-line mains with the redundant supplies failed
     */
    public record Feed(String sku, int count, int redundant, double sledsW) {
    }

    public static CatalogView of(Catalog catalog) {
        Map<String, Long> counts = new LinkedHashMap<>();
        counts.put("platforms", (long) catalog.platforms().size());
        counts.put("sled enclosures", (long) catalog.enclosures().size());
        counts.put("processors", (long) catalog.processors().size());
        counts.put("memory modules", (long) catalog.modules().size());
        counts.put("drives", (long) catalog.drives().size());
        counts.put("cards", (long) catalog.cards().size());
        counts.put("extras", (long) catalog.extras().size());
        counts.put("cooling kits", ofKind(catalog, CoolingKit.class));
        counts.put("power supplies", ofKind(catalog, Supply.class));
        List<Lot> lots = catalog.parts().stream().map(part -> catalog.lots(part.sku())).flatMap(Collection::stream).toList();
        counts.put("lots", (long) lots.size());
        counts.put("units in stock", lots.stream().mapToLong(Lot::available).sum());
        List<String> unsold = catalog.parts().stream().map(Part::sku).filter(sku -> catalog.lots(sku).isEmpty()).sorted().toList();
        return new CatalogView(catalog.name(), catalog.currency().getCurrencyCode(), catalog.pricedOn(), counts,
                catalog.enclosures().stream().map(CatalogView::housed).toList(), unsold, List.of());
    }

    /** The same with what is odd about it. */
    public CatalogView with(List<Warning> found) {
        return new CatalogView(name, currency, pricedOn, counts, enclosures, unsold, List.copyOf(found));
    }

    private static Housed housed(Enclosure enclosure) {
        return new Housed(enclosure.sku(), enclosure.name(), enclosure.bays(), enclosure.takes().stream().sorted().toList(),
                enclosure.supplies().stream().map(supply -> new Feed(supply.sku(), supply.count(), supply.redundant(),
                        EnclosurePower.capacityW(enclosure, supply, Limits.NONE))).toList());
    }

    private static long ofKind(Catalog catalog, Class<? extends Part> kind) {
        return catalog.parts().stream().filter(kind::isInstance).count();
    }
}
