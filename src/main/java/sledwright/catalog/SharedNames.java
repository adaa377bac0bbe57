package sledwright.catalog;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import sledwright.domain.CoolingAndPower;
import sledwright.domain.CoolingKit;
import sledwright.domain.Enclosure;
import sledwright.domain.Part;
import sledwright.domain.Platform;
import sledwright.domain.Power;
import sledwright.domain.Supply;

/** What kits and supplies are called that stand in several files: one of them that names the part names it for those that do not. */
final class SharedNames {

    private final Map<String, String> names = new HashMap<>();

    SharedNames(List<Platform> platforms, List<Enclosure> enclosures) {
        Stream<Part> kits = platforms.stream().flatMap(platform -> platform.cooling().stream());
        Stream<Part> supplies = Stream.concat(platforms.stream().flatMap(platform -> platform.power().supplies().stream()),
                enclosures.stream().flatMap(enclosure -> enclosure.supplies().stream()));
        Stream.concat(kits, supplies).filter(SharedNames::isNamed).forEach(part -> names.putIfAbsent(part.sku(), part.description()));
    }

    /** A part without a name of its own is called by its sku. */
    private static boolean isNamed(Part part) {
        return !part.description().equals(part.sku());
    }

    private String name(Part part) {
        return isNamed(part) ? part.description() : names.getOrDefault(part.sku(), part.sku());
    }

    private List<Supply> named(List<Supply> supplies) {
        return supplies.stream().map(supply -> supply.named(name(supply))).toList();
    }

    Platform named(Platform platform) {
        List<CoolingKit> kits = platform.cooling().stream().map(kit -> kit.named(name(kit))).toList();
        Power power = new Power(platform.power().baseW(), platform.power().budgetW(), named(platform.power().supplies()));
        return new Platform(platform.sku(), platform.name(), platform.processors(), platform.memory(), platform.board(),
                new CoolingAndPower(kits, platform.thermal(), power), platform.expansion());
    }

    Enclosure named(Enclosure enclosure) {
        return new Enclosure(enclosure.sku(), enclosure.name(), enclosure.takes(), enclosure.bays(), enclosure.baseW(), enclosure.budgetW(),
                named(enclosure.supplies()));
    }
}
