package sledwright.catalog;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import sledwright.domain.Enclosure;
import sledwright.domain.Power;
import sledwright.domain.Supply;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Located;
import sledwright.input.Section;
import sledwright.input.Source;
import sledwright.input.YamlReader;

/** Reads a file of {@code enclosures/}. */
final class EnclosureReader {

    private EnclosureReader() {
    }

    static EnclosureFile read(Path file, Faults faults) {
        return YamlReader.read(Source.of(file), faults).map(group -> enclosure(Section.top(group, faults)))
                .orElse(EnclosureFile.UNREADABLE);
    }

    private static EnclosureFile enclosure(Section top) {
        Faults faults = top.faults();
        int before = faults.size();
        String sku = top.sku("sku");
        String name = top.text("name", sku);
        int takesBefore = faults.size();
        List<Field> takes = top.list("takes");
        if (takes.isEmpty() && !faults.since(takesBefore)) {
            faults.add(top.place("takes"), "takes must list at least one platform that goes into the bays");
        }
        Set<String> platforms = platforms(takes, faults);
        int bays = top.whole("bays", CatalogBounds.BAYS);
        List<Located<Supply>> supplies = new ArrayList<>();
        Optional<Power> power = top.requiredSection("power").map(section -> power(section, supplies));
        top.finish();
        Optional<Enclosure> enclosure = faults.since(before) ? Optional.empty()
                : power.map(feed -> new Enclosure(sku, name, platforms, bays, feed.baseW(), feed.budgetW().orElse(0), feed.supplies()));
        return new EnclosureFile(enclosure, top.field("sku").map(field -> new Located<>(field.text(), field.place())), takes, supplies);
    }

    private static Set<String> platforms(List<Field> takes, Faults faults) {
        Set<String> platforms = new LinkedHashSet<>();
        for (Field platform : takes) {
            if (!platforms.add(platform.text())) {
                platform.fault("stands twice", faults);
            }
        }
        return platforms;
    }

    private static Power power(Section section, List<Located<Supply>> supplies) {
        int before = section.faults().size();
        Power power = PowerSectionReader.read(section, supplies);
        if (power.supplies().isEmpty() && !section.faults().since(before)) {
            section.faults().add(section.place("supplies"), "power.supplies must list at least one option: nothing else feeds the sleds");
        }
        return power;
    }
}
