package sledwright.request;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
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
import sledwright.input.Vocabulary;

/**
 * The drives, cards and extras of a request before they are held against a catalogue.
 *
 * @param extras units by sku
 */
record EquipmentDraft(List<VolumeWish> volumes, List<CardFields> cards, List<Entry> extras, EnclosureFrom enclosure) {

    /** @param sku empty where cards are asked for by their kind */
    record CardFields(Optional<Field> sku, CardWish wish) {
    }

    static final Vocabulary<RaidLevel> LEVELS = Vocabulary.of(List.of(RaidLevel.values()), RaidLevel::label);
    private static final String ANY = "any";
    private static final Vocabulary<Optional<DriveKind>> KINDS = orAny(DriveKind.values(), DriveKind::label);
    private static final Vocabulary<Optional<DriveInterface>> LINKS = orAny(DriveInterface.values(), DriveInterface::label);
    private static final Vocabulary<CardKind> CARD_KINDS = Vocabulary.of(List.of(CardKind.NETWORK, CardKind.CONTROLLER), CardKind::label);
    private static final Vocabulary<EnclosureFrom> ENCLOSURES = Vocabulary.of(List.of(EnclosureFrom.values()), EnclosureFrom::label);

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
        return top.wordIfAny("enclosure", ENCLOSURES).orElse(otherwise);
    }

    private static List<VolumeWish> volumes(Section require) {
        Faults faults = require.faults();
        List<VolumeWish> wishes = new ArrayList<>();
        Map<String, Place> seen = new HashMap<>();
        for (Section row : require.sections("storage")) {
            String name = row.uniqueName("volume", seen);
            double usableGb = row.number("usable_gb", RequestBounds.MEMORY_GB);
            Optional<RaidLevel> level = row.word("level", LEVELS);
            Optional<DriveKind> kind = row.wordIfAny("kind", KINDS).flatMap(given -> given);
            Optional<DriveInterface> link = row.wordIfAny("interface", LINKS).flatMap(given -> given);
            int spares = row.wholeIfAny("hot_spares", RequestBounds.HOT_SPARES).orElse(0);
            if (spares > 0 && level.isPresent() && level.get() == RaidLevel.LEVEL_0) {
                row.field("hot_spares").ifPresent(field -> field.fault("must be 0 at level 0: nothing can be rebuilt on a spare", faults));
            }
            row.finish();
            level.ifPresent(found -> wishes.add(new VolumeWish(name, usableGb, found, kind, link, spares)));
        }
        return wishes;
    }

    private static <T> Vocabulary<Optional<T>> orAny(T[] all, Function<T, String> word) {
        List<Optional<T>> given = new ArrayList<>(List.of(Optional.empty()));
        for (T one : all) {
            given.add(Optional.of(one));
        }
        return Vocabulary.of(given, one -> one.map(word).orElse(ANY));
    }

    private static List<CardFields> cards(Section require) {
        Faults faults = require.faults();
        List<CardFields> wishes = new ArrayList<>();
        for (Section row : require.sections("cards")) {
            Optional<Field> sku = row.field("sku");
            Optional<CardKind> kind = row.wordIfAny("kind", CARD_KINDS);
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
