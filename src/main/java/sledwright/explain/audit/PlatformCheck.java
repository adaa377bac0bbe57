package sledwright.explain.audit;

import java.util.List;
import java.util.function.BiConsumer;
import sledwright.catalog.PlacedCatalog;
import sledwright.domain.Catalog;
import sledwright.domain.Platform;
import sledwright.input.Place;

/** What can be odd about each platform by itself. */
interface PlatformCheck extends Audit.Check {

    /** What is odd about one platform, a sentence each. */
    List<String> messages(Platform platform, Catalog catalog);

    @Override
    default void look(PlacedCatalog placed, BiConsumer<Place, String> odd) {
        placed.catalog().platforms().forEach(platform -> messages(platform, placed.catalog())
                .forEach(message -> odd.accept(placed.parts().get(platform.sku()), message)));
    }
}
