package sledwright.explain.audit;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import sledwright.catalog.OfferRow;
import sledwright.catalog.PlacedCatalog;
import sledwright.domain.Catalog;
import sledwright.domain.Enclosure;
import sledwright.domain.Lot;
import sledwright.domain.Platform;
import sledwright.domain.Supply;
import sledwright.input.Located;
import sledwright.input.Place;
import sledwright.words.Sentences;

/**
 * Stock of a heat sink, supply, enclosure, riser or part of a platform's needs whose platforms can none be had; a lot is named once. Extras
 * that no platform names are sold to whoever asks for them.
 */
final class IdleCompanions implements Audit.Check {

    @Override
    public void look(PlacedCatalog placed, BiConsumer<Place, String> odd) {
        Catalog catalog = placed.catalog();
        Map<String, SortedSet<String>> homes = homes(catalog);
        Set<List<String>> seen = new HashSet<>();
        for (Located<OfferRow> row : placed.offers()) {
            OfferRow offer = row.value();
            SortedSet<String> of = homes.getOrDefault(offer.sku(), new TreeSet<>());
            if (!of.isEmpty() && offer.stock().units() > 0 && of.stream().noneMatch(platform -> isThere(platform, catalog))
                    && seen.add(List.of(offer.sku(), offer.lot()))) {
                odd.accept(row.place(), "lot %s offers %s of %s, which only goes with %s, of which nobody has any."
                        .formatted(offer.lot(), offer.stock().units(), offer.sku(), Sentences.list(List.copyOf(of))));
            }
        }
    }

    /** Part -> platforms that it goes with. */
    private static Map<String, SortedSet<String>> homes(Catalog catalog) {
        Map<String, SortedSet<String>> homes = new TreeMap<>();
        for (Platform platform : catalog.platforms()) {
            List<Enclosure> around = catalog.enclosures().stream().filter(enclosure -> enclosure.takes(platform)).toList();
            Stream.of(platform.cooling().stream().map(kit -> kit.sku()),
                    Stream.concat(platform.power().supplies().stream(), around.stream().flatMap(one -> one.supplies().stream()))
                            .map(Supply::sku),
                    around.stream().map(Enclosure::sku), platform.expansion().slots().stream().flatMap(slot -> slot.riser().stream()),
                    platform.expansion().needs().stream().flatMap(need -> need.parts().keySet().stream())).flatMap(some -> some)
                    .forEach(sku -> homes.computeIfAbsent(sku, part -> new TreeSet<>()).add(platform.sku()));
        }
        return homes;
    }

    private static boolean isThere(String platform, Catalog catalog) {
        return catalog.lots(platform).stream().mapToInt(Lot::available).sum() > 0;
    }
}
