package sledwright.catalog;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import sledwright.domain.Board;
import sledwright.domain.CoolingAndPower;
import sledwright.domain.CoolingKit;
import sledwright.domain.Expansion;
import sledwright.domain.MemorySupport;
import sledwright.domain.Platform;
import sledwright.domain.Power;
import sledwright.domain.ProcessorSupport;
import sledwright.domain.Slot;
import sledwright.domain.Supply;
import sledwright.domain.Thermal;
import sledwright.input.Bounds;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Located;
import sledwright.input.Nearest;
import sledwright.input.Place;
import sledwright.input.Section;
import sledwright.input.Source;
import sledwright.input.YamlReader;

/** Reads a file of {@code platforms/}: processors, cooling and slots here, the rest by a reader for each section. */
final class PlatformReader {

    private final Section top;
    private final Faults faults;
    private final List<Located<CoolingKit>> kits = new ArrayList<>();
    private final List<Located<Supply>> supplies = new ArrayList<>();
    private final List<Field> extras = new ArrayList<>();

    /** Sockets of the board; 0 when they are faulty. */
    private int sockets;

    private PlatformReader(Section top) {
        this.top = top;
        this.faults = top.faults();
    }

    static PlatformFile read(Path file, Faults faults) {
        return YamlReader.read(Source.of(file), faults).map(group -> new PlatformReader(Section.top(group, faults)).platform())
                .orElse(PlatformFile.UNREADABLE);
    }

    private PlatformFile platform() {
        int before = faults.size();
        String sku = top.sku("sku");
        String name = top.text("name", sku);
        Optional<ProcessorSupport> processors = top.requiredSection("processors").flatMap(this::processors);
        Optional<Section> memorySection = top.requiredSection("memory");
        int channels = memorySection.map(section -> section.whole("channels", CatalogBounds.CHANNELS)).orElse(0);
        int slotsPerChannel = memorySection
                .map(section -> section.whole("slots_per_channel", CatalogBounds.SLOTS_PER_CHANNEL)).orElse(0);
        Optional<MemorySupport> memory = memorySection
                .flatMap(section -> MemorySectionReader.read(section, channels, slotsPerChannel));
        Optional<Board> board = memorySection.flatMap(section -> board(section, channels, slotsPerChannel));
        memorySection.ifPresent(Section::finish);
        cooling(board);
        Thermal thermal = top.section("thermal").map(ThermalSectionReader::read).orElse(ThermalSectionReader.NO_RULE);
        Optional<Power> power = top.requiredSection("power").map(section -> PowerSectionReader.read(section, supplies));
        Expansion expansion = ExpansionReader.read(top, sockets, extras);
        top.finish();
        Optional<Platform> platform = faults.since(before) ? Optional.empty()
                : Optional.of(new Platform(sku, name, processors.orElseThrow(), memory.orElseThrow(), board.orElseThrow(),
                        new CoolingAndPower(kits.stream().map(Located::value).toList(), thermal, power.orElseThrow()), expansion));
        return new PlatformFile(platform, top.field("sku").map(field -> new Located<>(field.text(), field.place())), kits,
                supplies, extras);
    }

    private Optional<ProcessorSupport> processors(Section section) {
        int before = faults.size();
        Set<String> generations = new LinkedHashSet<>();
        section.list("generations").forEach(field -> generations.add(field.text()));
        if (generations.isEmpty() && !faults.since(before)) {
            section.missing("generations");
        }
        int countsBefore = faults.size();
        Set<Integer> counts = distinct(section.list("counts"), CatalogBounds.PROCESSOR_COUNT, faults);
        if (counts.isEmpty() && !faults.since(countsBefore)) {
            section.missing("counts");
        }
        int most = faults.since(countsBefore) ? 0 : Collections.max(counts);
        sockets = section.wholeIfAny("sockets", CatalogBounds.SOCKETS).orElse(most);
        if (sockets < most) {
            section.field("sockets")
                    .ifPresent(field -> field.fault("must be at least %s, the most processors of counts".formatted(most), faults));
        }
        String socket = section.text("socket");
        double maxTdpW = section.number("max_tdp_w", CatalogBounds.TDP_W);
        section.finish();
        return faults.since(before) ? Optional.empty()
                : Optional.of(new ProcessorSupport(socket, generations, List.copyOf(counts), maxTdpW, sockets));
    }

    /** Whole figures of which none may stand twice. */
    static Set<Integer> distinct(List<Field> fields, Bounds bounds, Faults faults) {
        Set<Integer> figures = new LinkedHashSet<>();
        for (Field field : fields) {
            Optional<Integer> figure = field.whole(bounds, faults);
            if (figure.isPresent() && !figures.add(figure.get())) {
                field.fault("stands twice", faults);
            }
        }
        return figures;
    }

    /** The slots; empty when the figures that they follow from are faulty. */
    private Optional<Board> board(Section section, int channels, int slotsPerChannel) {
        List<Field> names = section.list("slot_names");
        int before = faults.size();
        Set<String> seen = new HashSet<>();
        for (Field name : names) {
            name.sku(faults);
            if (!seen.add(name.text())) {
                name.fault("names two slots", faults);
            }
        }
        String fillSide = section.text("fill_side", "");
        int slots = sockets * channels * slotsPerChannel;
        if (slots == 0) {
            return Optional.empty();
        }
        if (!names.isEmpty() && names.size() != slots) {
            faults.add(section.place("slot_names"), "memory.slot_names has %s names and needs %s: sockets %s x channels %s x slots %s"
                    .formatted(names.size(), slots, sockets, channels, slotsPerChannel));
        }
        return faults.since(before) ? Optional.empty()
                : Optional.of(new Board(sockets, channels, slotsPerChannel, fillSide, names.stream().map(Field::text).toList()));
    }

    private void cooling(Optional<Board> board) {
        int before = faults.size();
        Optional<Nearest> slots = board.map(known -> new Nearest(known.slots().stream().map(Slot::name).toList()));
        Map<String, Place> seen = new HashMap<>();
        for (Section section : top.sections("cooling")) {
            int kitBefore = faults.size();
            String sku = section.sku("sku");
            CoolingKit kit = new CoolingKit(sku, section.text("name", sku), section.number("max_tdp_w", CatalogBounds.TDP_W),
                    covers(section, board, slots));
            section.finish();
            Place earlier = seen.putIfAbsent(sku, section.place());
            if (earlier != null && !sku.isEmpty()) {
                faults.add(section.place(), "cooling kit \"%s\" stands twice, first at line %s".formatted(sku, earlier.line()));
            }
            if (!faults.since(kitBefore)) {
                kits.add(new Located<>(kit, section.place()));
            }
        }
        if (seen.isEmpty() && !faults.since(before)) {
            faults.add(top.place("cooling"), "cooling must list at least one kit: every processor carries one");
        }
    }

    private List<String> covers(Section section, Optional<Board> board, Optional<Nearest> slots) {
        List<Field> covers = section.list("covers");
        for (Field cover : covers) {
            if (board.isPresent() && board.get().slot(cover.text()).isEmpty()) {
                cover.fault("is no slot of this platform" + slots.orElseThrow().hint(cover.text()), faults);
            }
        }
        return covers.stream().map(Field::text).toList();
    }
}
