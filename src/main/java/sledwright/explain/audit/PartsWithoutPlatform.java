package sledwright.explain.audit;

import java.util.ArrayList;
import java.util.List;
import sledwright.catalog.PlacedCatalog;
import sledwright.domain.Catalog;
import sledwright.words.Numbers;

/** A processor or memory module that no platform takes. */
final class PartsWithoutPlatform implements Audit.Check {

    @Override
    public String id() {
        return "no-platform";
    }

    @Override
    public List<Warning> look(PlacedCatalog placed) {
        Catalog catalog = placed.catalog();
        List<Warning> warnings = new ArrayList<>();
        catalog.processors().stream().filter(processor -> !Usable.anywhere(processor, catalog))
                .forEach(processor ->
                warnings.add(new Warning(id(), placed.parts().get(processor.sku()),
                "no platform takes processor %s: socket %s, generation %s, %s W.".formatted(processor.sku(),
                        processor.socket(), processor.generation(), Numbers.plain(processor.tdpW())))));
        catalog.modules().stream().filter(module -> !Usable.anywhere(module, catalog)).forEach(module -> warnings.add(new Warning(id(),
                placed.parts().get(module.sku()), "no platform takes memory module %s: %s %s with %s ranks."
                .formatted(module.sku(), module.generation(), module.type().label(), module.ranks()))));
        return warnings;
    }
}
