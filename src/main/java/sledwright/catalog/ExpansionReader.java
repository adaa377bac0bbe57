package sledwright.catalog;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import sledwright.domain.BayGroup;
import sledwright.domain.CardHeight;
import sledwright.domain.CardShape;
import sledwright.domain.CardSlot;
import sledwright.domain.DriveInterface;
import sledwright.domain.DriveSupport;
import sledwright.domain.Expansion;
import sledwright.domain.Fitout;
import sledwright.domain.FormFactor;
import sledwright.domain.Need;
import sledwright.domain.RaidLevel;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Place;
import sledwright.input.Section;
import sledwright.input.Section.Entry;
import sledwright.input.Vocabulary;

/** Reads what a platform takes besides processors and memory: the sections {@code storage}, {@code slots} and {@code needs}. */
final class ExpansionReader {

    private final Section top;
    private final Faults faults;
    /** Sockets of the board; 0 where they are faulty. */
    private final int sockets;
    /** Takes every part number that must be one of an extra. */
    private final List<Field> extras;

    private ExpansionReader(Section top, int sockets, List<Field> extras) {
        this.top = top;
        this.faults = top.faults();
        this.sockets = sockets;
        this.extras = extras;
    }

    /**
     * @param sockets sockets of the board; 0 where they are faulty
     * @param extras  takes every part number that must be one of an extra
     */
    static Expansion read(Section top, int sockets, List<Field> extras) {
        return new ExpansionReader(top, sockets, extras).expansion();
    }

    private Expansion expansion() {
        Optional<Section> storage = top.section("storage");
        List<BayGroup> bays = storage.map(this::bays).orElse(List.of());
        Optional<DriveSupport> onboard = storage.flatMap(section -> section.section("onboard")).map(this::onboard);
        storage.ifPresent(Section::finish);
        return new Expansion(bays, onboard, slots(), needs());
    }

    private List<BayGroup> bays(Section storage) {
        List<BayGroup> groups = new ArrayList<>();
        Map<String, Place> seen = new HashMap<>();
        for (Section row : storage.sections("bays")) {
            String name = row.uniqueName("group of bays", seen);
            int count = row.whole("count", CatalogBounds.DRIVE_BAYS);
            Set<FormFactor> sizes = words(row, "form_factors", FormFactor.class, EquipmentTables.FORM_FACTORS, true);
            Set<DriveInterface> links = words(row, "interfaces", DriveInterface.class, EquipmentTables.LINKS, true);
            Set<RaidLevel> levels = levels(row);
            OptionalInt socket = socket(row);
            row.finish();
            groups.add(new BayGroup(name, count, sizes, links, levels, socket));
        }
        return groups;
    }

    private DriveSupport onboard(Section section) {
        Set<DriveInterface> links = words(section, "drive_interfaces", DriveInterface.class, EquipmentTables.LINKS, true);
        if (links.contains(DriveInterface.NVME)) {
            faults.add(section.place("drive_interfaces"),
                    "drive_interfaces cannot list NVMe: such drives hang on their group of bays; list it there");
        }
        DriveSupport support = new DriveSupport(links, section.whole("drive_ports", CatalogBounds.DRIVE_PORTS), levels(section));
        section.finish();
        return support;
    }

    private List<CardSlot> slots() {
        List<CardSlot> slots = new ArrayList<>();
        Map<String, Place> seen = new HashMap<>();
        for (Section row : top.sections("slots")) {
            String name = row.uniqueName("slot", seen);
            if (name.equals(Fitout.ONBOARD)) {
                faults.add(row.place("name"), "a slot cannot be called %s: the word stands for what the board drives by itself"
                        .formatted(name));
            }
            CardShape offers = new CardShape(row.whole("pcie_generation", CatalogBounds.PCIE_GENERATION),
                    row.whole("lanes", CatalogBounds.LANES), row.word("height", EquipmentTables.HEIGHTS).orElse(CardHeight.LOW),
                    row.number("length_mm", CatalogBounds.LENGTH_MM), row.number("max_w", CatalogBounds.CARD_W));
            Optional<Field> riser = row.field("riser").filter(field -> field.sku(faults).isPresent());
            riser.ifPresent(extras::add);
            OptionalInt socket = socket(row);
            row.finish();
            slots.add(new CardSlot(name, offers, socket, riser.map(Field::text)));
        }
        return slots;
    }

    private List<Need> needs() {
        List<Need> needs = new ArrayList<>();
        for (Section row : top.sections("needs")) {
            Optional<Integer> processors = row.wholeIfAny("processors", CatalogBounds.PROCESSOR_COUNT);
            Optional<Integer> empty = row.wholeIfAny("empty_sockets", CatalogBounds.EMPTY_SOCKETS);
            if (row.has("processors") == row.has("empty_sockets")) {
                faults.add(row.place(), "needs: a row has either processors or empty_sockets");
            }
            Map<String, Integer> parts = new LinkedHashMap<>();
            for (Entry entry : row.entries("parts")) {
                if (entry.key().sku(faults).isPresent()) {
                    extras.add(entry.key());
                    entry.value().whole(CatalogBounds.EXTRA_UNITS, faults).ifPresent(units -> parts.put(entry.key().text(), units));
                }
            }
            if (!row.has("parts")) {
                row.missing("parts");
            }
            row.finish();
            needs.add(empty.isPresent() ? new Need(Need.Cause.EMPTY_SOCKETS, 0, parts)
                    : new Need(Need.Cause.PROCESSORS, processors.orElse(1), parts));
        }
        return needs;
    }

    private OptionalInt socket(Section row) {
        Optional<Integer> socket = row.wholeIfAny("socket", CatalogBounds.SOCKET);
        if (sockets > 0 && socket.orElse(0) > sockets) {
            row.field("socket").ifPresent(field ->
                    field.fault("must be at most %s: the board has no more sockets".formatted(sockets), faults));
        }
        return socket.map(OptionalInt::of).orElse(OptionalInt.empty());
    }

    private Set<RaidLevel> levels(Section row) {
        return words(row, "raid_levels", RaidLevel.class, EquipmentTables.LEVELS, false);
    }

    private <T extends Enum<T>> Set<T> words(Section row, String key, Class<T> kind, Vocabulary<T> words, boolean needed) {
        int before = faults.size();
        Set<T> found = EnumSet.noneOf(kind);
        row.list(key).forEach(field -> field.word(words, faults).ifPresent(found::add));
        if (needed && found.isEmpty() && !faults.since(before)) {
            row.missing(key);
        }
        return found;
    }
}
