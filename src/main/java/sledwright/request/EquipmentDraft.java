package sledwright.request;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.domain.CardKind;
import sledwright.domain.CardWish;
import sledwright.domain.DriveInterface;
import sledwright.domain.DriveKind;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Equipment;
import sledwright.domain.RaidLevel;
import sledwright.domain.VolumeWish;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Place;
import sledwright.input.Section;
import sledwright.input.Section.Entry;

/**
 * The drives, cards and extras of a request before they are held against a catalogue.
 *
 * @param extras units by sku
 */
record EquipmentDraft(List<VolumeWish> volumes, List<CardFields> cards, List<Entry> extras, EnclosureFrom enclosure) {

    /** @param sku empty where cards are asked for by their kind */
    record CardFields(Optional<Field> sku, CardWish wish) {
    }

    static final List<String> LEVELS = RaidLevel.LABELS;
    private static final String ANY = "any";
    private static final List<String> KINDS = List.of(ANY, DriveKind.HDD.label(), DriveKind.SSD.label());
    private static final List<String> LINKS = List.of(ANY, DriveInterface.SATA.label(), DriveInterface.SAS.label(),
            DriveInterface.NVME.label());
    private static final List<CardKind> BY_KIND = List.of(CardKind.NETWORK, CardKind.CONTROLLER);
    private static final List<String> CARD_KINDS = BY_KIND.stream().map(CardKind::label).toList();
    private static final List<String> ENCLOSURES = Arrays.stream(EnclosureFrom.values()).map(EnclosureFrom::label).toList();

    EquipmentDraft {
        volumes = List.copyOf(volumes);
        cards = List.copyOf(cards);
        extras = List.copyOf(extras);
    }

    /** What a request asks for under {@code require}. */
    static EquipmentDraft required(Section require, List<Entry> extras, EnclosureFrom enclosure) {
        return new EquipmentDraft(volumes(require), cards(require), extras, enclosure);
    }

    static EnclosureFrom enclosure(Section top, EnclosureFrom otherwise) {
        return top.wordIfAny("enclosure", EnclosureFrom::named, ENCLOSURES).orElse(otherwise);
    }

    private static List<VolumeWish> volumes(Section require) {
        Faults faults = require.faults();
        List<VolumeWish> wishes = new ArrayList<>();
        Map<String, Place> seen = new HashMap<>();
        for (Section row : require.sections("storage")) {
            String name = row.sku("name");
            double usableGb = row.number("usable_gb", RequestBounds.MEMORY_GB);
            Optional<RaidLevel> level = row.required("level").flatMap(field -> field.word(RaidLevel::named, LEVELS, faults));
            Optional<DriveKind> kind = word(row, "kind", KINDS).flatMap(DriveKind::named);
            Optional<DriveInterface> link = word(row, "interface", LINKS).flatMap(DriveInterface::named);
            int spares = row.wholeIfAny("hot_spares", RequestBounds.HOT_SPARES).orElse(0);
            if (spares > 0 && level.isPresent() && level.get() == RaidLevel.LEVEL_0) {
                row.field("hot_spares").ifPresent(field -> field.fault("must be 0 at level 0: nothing can be rebuilt on a spare", faults));
            }
            row.finish();
            Place earlier = name.isEmpty() ? null : seen.putIfAbsent(name, row.place());
            if (earlier != null) {
                faults.add(row.place("name"), "volume \"%s\" stands twice, first at line %s".formatted(Field.shown(name), earlier.line()));
            }
            level.ifPresent(found -> wishes.add(new VolumeWish(name, usableGb, found, kind, link, spares)));
        }
        return wishes;
    }

    private static Optional<String> word(Section row, String key, List<String> words) {
        return row.wordIfAny(key, text -> Optional.of(text).filter(words::contains), words);
    }

    private static List<CardFields> cards(Section require) {
        Faults faults = require.faults();
        List<CardFields> wishes = new ArrayList<>();
        for (Section row : require.sections("cards")) {
            Optional<Field> sku = row.field("sku");
            Optional<CardKind> kind = row.wordIfAny("kind", word -> CardKind.named(word).filter(BY_KIND::contains), CARD_KINDS);
            if (row.has("sku") == row.has("kind")) {
                faults.add(row.place(), "a card is asked for either by sku or by kind");
            }
            if (kind.isEmpty() || kind.get() != CardKind.NETWORK) {
                for (String key : List.of("ports", "port_gbit")) {
                    row.field(key).ifPresent(field -> field.fault("goes with kind network alone", faults));
                }
            }
            int ports = row.wholeIfAny("ports", RequestBounds.CARD_PORTS).orElse(0);
            double gbit = row.decimalIfAny("port_gbit", RequestBounds.PORT_GBIT).map(BigDecimal::doubleValue).orElse(0.0);
            int count = row.wholeIfAny("count", RequestBounds.CARD_COUNT).orElse(1);
            row.finish();
            wishes.add(new CardFields(sku, new CardWish(sku.map(Field::text), kind, ports, gbit, count)));
        }
        return wishes;
    }

    /** What is asked for, of the catalogue's parts; what is unknown there goes to the faults of {@code find} and is left out. */
    Equipment resolve(Resolver find) {
        Map<String, Integer> units = new LinkedHashMap<>();
        find.extras(extras).forEach((extra, count) -> units.put(extra.sku(), count));
        cards.forEach(card -> card.sku().ifPresent(find::card));
        return new Equipment(volumes, cards.stream().map(CardFields::wish).toList(), units, enclosure);
    }
}
