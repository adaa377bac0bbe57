package sledwright.explain.audit;

import java.util.ArrayList;
import java.util.List;
import sledwright.catalog.PlacedCatalog;
import sledwright.domain.Catalog;
import sledwright.domain.Platform;

/** What can be odd about each platform by itself. */
interface PlatformCheck extends Audit.Check {

    /** What is odd about one platform, a sentence each. */
    List<String> messages(Platform platform, Catalog catalog);

    @Override
    default List<Warning> look(PlacedCatalog placed) {
        List<Warning> warnings = new ArrayList<>();
        for (Platform platform : placed.catalog().platforms()) {
            messages(platform, placed.catalog())
                    .forEach(message -> warnings.add(new Warning(id(), placed.parts().get(platform.sku()), message)));
        }
        return warnings;
    }
}
