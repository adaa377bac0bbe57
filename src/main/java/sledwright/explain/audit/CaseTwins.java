package sledwright.explain.audit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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

        List<Warning> twins(String check, String what) {
            List<Warning> warnings = new ArrayList<>();
            for (Map<String, Place> same : spellings.values()) {
                if (same.size() > 1) {
                    List<String> names = List.copyOf(same.keySet());
                    warnings.add(new Warning(check, same.get(names.get(1)),
                            "%s that differ only by case: %s.".formatted(what, String.join(", ", names))));
                }
            }
            return warnings;
        }
    }

    @Override
    public String id() {
        return "case-twins";
    }

    @Override
    public List<Warning> look(PlacedCatalog placed) {
        Names skus = new Names();
        placed.catalog().parts().forEach(part -> skus.add(part.sku(), placed.parts().get(part.sku())));
        List<Warning> warnings = new ArrayList<>(skus.twins(id(), "part numbers"));
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
        warnings.addAll(sockets.twins(id(), "sockets"));
        warnings.addAll(generations.twins(id(), "generations"));
        warnings.addAll(offers(placed));
        return warnings;
    }

    private List<Warning> offers(PlacedCatalog placed) {
        Names suppliers = new Names();
        Map<String, Names> lots = new LinkedHashMap<>();
        for (Located<OfferRow> row : placed.offers()) {
            OfferRow offer = row.value();
            suppliers.add(offer.supplier(), row.place());
            lots.computeIfAbsent(offer.sku(), sku -> new Names()).add(offer.lot(), row.place());
        }
        List<Warning> warnings = new ArrayList<>(suppliers.twins(id(), "suppliers"));
        lots.forEach((sku, names) -> warnings.addAll(names.twins(id(), "lots of " + sku)));
        return warnings;
    }
}
