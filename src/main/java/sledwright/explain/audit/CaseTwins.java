package sledwright.explain.audit;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.BiConsumer;
import sledwright.catalog.OfferRow;
import sledwright.catalog.PlacedCatalog;
import sledwright.domain.MemoryModule;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.input.Located;
import sledwright.input.Place;

/** Names that differ only by upper and lower case: what people take for one, and the program for two. */
final class CaseTwins implements Audit.Check {

    /** Spellings of one name, in the order in which they stand, each with its first place. */
    private static final class Names {

        private final Map<String, Map<String, Place>> spellings = new LinkedHashMap<>();

        void add(String name, Place place) {
            spellings.computeIfAbsent(name.toLowerCase(Locale.ROOT), key -> new LinkedHashMap<>()).putIfAbsent(name, place);
        }

        void tellTwins(String what, BiConsumer<Place, String> odd) {
            spellings.values().stream().filter(same -> same.size() > 1).forEach(same -> {
                List<String> names = List.copyOf(same.keySet());
                odd.accept(same.get(names.get(1)), "%s that differ only by case: %s.".formatted(what, String.join(", ", names)));
            });
        }
    }

    @Override
    public void look(PlacedCatalog placed, BiConsumer<Place, String> odd) {
        Names skus = new Names();
        placed.catalog().parts().forEach(part -> skus.add(part.sku(), placed.parts().get(part.sku())));
        skus.tellTwins("part numbers", odd);
        Names sockets = new Names();
        Names generations = new Names();
        for (Platform platform : placed.catalog().platforms()) {
            Place place = placed.parts().get(platform.sku());
            sockets.add(platform.processors().socket(), place);
            platform.processors().generations().stream().sorted().forEach(generation -> generations.add(generation, place));
            generations.add(platform.memory().generation(), place);
        }
        for (Processor processor : placed.catalog().processors()) {
            sockets.add(processor.socket(), placed.parts().get(processor.sku()));
            generations.add(processor.generation(), placed.parts().get(processor.sku()));
        }
        for (MemoryModule module : placed.catalog().modules()) {
            generations.add(module.generation(), placed.parts().get(module.sku()));
        }
        sockets.tellTwins("sockets", odd);
        generations.tellTwins("generations", odd);
        offers(placed, odd);
    }

    private static void offers(PlacedCatalog placed, BiConsumer<Place, String> odd) {
        Names suppliers = new Names();
        Map<String, Names> lots = new LinkedHashMap<>();
        for (Located<OfferRow> row : placed.offers()) {
            OfferRow offer = row.value();
            suppliers.add(offer.supplier(), row.place());
            lots.computeIfAbsent(offer.sku(), sku -> new Names()).add(offer.lot(), row.place());
        }
        suppliers.tellTwins("suppliers", odd);
        lots.forEach((sku, names) -> names.tellTwins("lots of " + sku, odd));
    }
}
