package sledwright.book;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import sledwright.catalog.CatalogSource;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Drive;
import sledwright.domain.Fitout;
import sledwright.domain.Part;
import sledwright.domain.Volume;
import sledwright.input.Source;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;

/** A machine as the book keeps it: with the keys of a file of kind {@code build}, by whose reader it comes back. */
final class MachineFile {

    private static final ObjectMapper JSON = new ObjectMapper();

    private MachineFile() {
    }

    static Map<String, Object> of(Build build) {
        Map<String, Object> file = new LinkedHashMap<>();
        file.put("kind", Kind.BUILD.label());
        file.put("platform", build.platform().sku());
        file.put("processor", build.processor().sku());
        file.put("processors", build.processors().size());
        file.put("cooling", build.cooling().sku());
        build.supply().ifPresent(supply -> {
            file.put("supply", supply.sku());
            file.put("supply_count", supply.count());
        });
        Map<String, String> slots = new LinkedHashMap<>();
        build.modules().forEach((slot, module) -> slots.put(slot.name(), module.sku()));
        file.put("modules", slots);
        Fitout fitout = build.fitout();
        if (!fitout.volumes().isEmpty()) {
            file.put("volumes", fitout.volumes().stream().map(MachineFile::of).toList());
        }
        fitout.driver().ifPresent(driver -> file.put("driver", driver));
        if (!fitout.cards().isEmpty()) {
            file.put("cards", fitout.cards().entrySet().stream().collect(Collectors.toMap(Map.Entry::getKey, card -> card.getValue().sku(),
                    (one, other) -> one, LinkedHashMap::new)));
        }
        if (!fitout.extrasBySku().isEmpty()) {
            file.put("extras", fitout.extrasBySku());
        }
        return file;
    }

    private static Map<String, Object> of(Volume volume) {
        Map<String, Object> file = new LinkedHashMap<>();
        file.put("name", volume.name());
        file.put("level", volume.level().number());
        file.put("group", volume.group());
        file.put("drives", volume.drives().stream().map(Drive::sku).toList());
        if (!volume.hotSpares().isEmpty()) {
            file.put("hot_spares", volume.hotSpares().stream().map(Part::sku).toList());
        }
        return file;
    }

    /**
     * The machine again.
     *
     * @throws sledwright.input.FaultsException when the shop's catalogue does not have its parts any more
     */
    static Build read(String name, Map<String, Object> file, Catalog shop) {
        try {
            Source source = Source.named(name, name, JSON.writeValueAsBytes(file));
            return ((Job.Judge) RequestReader.read(source, List.of(), Optional.of(CatalogSource.of(shop)), Set.of(Kind.BUILD))).build();
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
