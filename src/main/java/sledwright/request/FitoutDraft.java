package sledwright.request;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import sledwright.domain.Card;
import sledwright.domain.Drive;
import sledwright.domain.Fitout;
import sledwright.domain.RaidLevel;
import sledwright.domain.Volume;
import sledwright.input.Field;
import sledwright.input.Place;
import sledwright.input.Section;
import sledwright.input.Section.Entry;

/**
 * The drives, cards and extras of a build before they are held against a catalogue. Bay groups, slots and driver are left to the rules.
 *
 * @param cards  skus by slot
 * @param extras units by sku
 */
record FitoutDraft(List<VolumeFields> volumes, Optional<Field> driver, List<Entry> cards, List<Entry> extras) {

    /** @param drives skus of data drives, as {@code hotSpares} of the others */
    record VolumeFields(String name, RaidLevel level, String group, List<Field> drives, List<Field> hotSpares) {

        Volume resolve(Resolver find) {
            return new Volume(name, level, group, drives(drives, find), drives(hotSpares, find));
        }

        private static List<Drive> drives(List<Field> skus, Resolver find) {
            return skus.stream().flatMap(sku -> find.drive(sku).stream()).toList();
        }
    }

    static FitoutDraft read(Section top) {
        return new FitoutDraft(volumes(top), top.field("driver"), top.entries("cards"), top.entries("extras"));
    }

    private static List<VolumeFields> volumes(Section top) {
        List<VolumeFields> found = new ArrayList<>();
        Map<String, Place> seen = new HashMap<>();
        for (Section row : top.sections("volumes")) {
            String name = row.uniqueName("volume", seen);
            Optional<RaidLevel> level = row.word("level", EquipmentDraft.LEVELS);
            String group = row.text("group");
            List<Field> drives = row.list("drives");
            if (!row.has("drives")) {
                row.missing("drives");
            }
            List<Field> spares = row.list("hot_spares");
            row.finish();
            level.ifPresent(known -> found.add(new VolumeFields(name, known, group, drives, spares)));
        }
        return found;
    }

    /** The parts; what is unknown goes to the faults of {@code find} and is left out. */
    Fitout resolve(Resolver find) {
        SortedMap<String, Card> fitted = new TreeMap<>();
        cards.forEach(entry -> find.card(entry.value()).ifPresent(card -> fitted.put(entry.key().text(), card)));
        return new Fitout(volumes.stream().map(volume -> volume.resolve(find)).toList(), driver.map(Field::text), fitted,
                find.extras(extras), Optional.empty());
    }
}
