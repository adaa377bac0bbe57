package sledwright.explain.audit;

import java.util.List;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import sledwright.catalog.PlacedCatalog;
import sledwright.domain.Card;
import sledwright.domain.Catalog;
import sledwright.domain.Drive;
import sledwright.domain.MemoryModule;
import sledwright.domain.Part;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.input.Place;
import sledwright.words.Numbers;

/** A processor, memory module, drive or card that no platform takes. */
final class PartsWithoutPlatform implements Audit.Check {

    @Override
    public void look(PlacedCatalog placed, BiConsumer<Place, String> odd) {
        Usable.nowhere(placed.catalog()).forEach(part -> odd.accept(placed.parts().get(part.sku()), message(part, placed.catalog())));
    }

    private static String message(Part part, Catalog catalog) {
        if (part instanceof Processor processor) {
            return "no platform takes processor %s: socket %s, generation %s, %s W.".formatted(processor.sku(), processor.socket(),
                    processor.generation(), Numbers.plain(processor.tdpW()));
        }
        if (part instanceof Drive drive) {
            return "no platform takes drive %s: %s.".formatted(drive.sku(), lacking(drive, catalog));
        }
        if (part instanceof Card card) {
            return "no platform takes card %s: no slot has %s of PCI Express generation %s and takes %s height, %s mm and %s W."
                    .formatted(card.sku(), Numbers.counted(card.shape().lanes(), "lane"), card.shape().pcieGeneration(),
                    card.shape().height().label(), Numbers.plain(card.shape().lengthMm()), Numbers.plain(card.powerW()));
        }
        MemoryModule module = (MemoryModule) part;
        return "no platform takes memory module %s: %s %s with %s.".formatted(module.sku(), module.generation(), module.type().label(),
                Numbers.counted(module.ranks(), "rank"));
    }

    private static String lacking(Drive drive, Catalog catalog) {
        List<Platform> housing = catalog.platforms().stream().filter(platform -> Usable.hasBay(drive, platform)).toList();
        return housing.isEmpty()
                ? "no bay takes %s drives with %s".formatted(drive.formFactor().label(), drive.link().label())
                : "%s with such bays, neither the board nor a controller that fits drives %s".formatted(
                housing.stream().map(Platform::sku).collect(Collectors.joining(", ", "in ", "")), drive.link().label());
    }
}
