package sledwright.catalog;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModes;
import sledwright.domain.MemorySupport;
import sledwright.domain.ModuleMix;
import sledwright.domain.ModuleType;
import sledwright.domain.SpeedEntry;
import sledwright.input.Bounds;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Located;
import sledwright.input.Section;
import sledwright.input.Section.Entry;

/** Reads a platform's section {@code memory}, except for its slots. */
final class MemorySectionReader {

    private static final int DEFAULT_CAPACITIES = 2;
    private static final double DEFAULT_MIRRORED = 0.5;

    private final Section section;
    private final Faults faults;

    private final int channels;
    private final int slotsPerChannel;

    private MemorySectionReader(Section section, int channels, int slotsPerChannel) {
        this.section = section;
        this.channels = channels;
        this.slotsPerChannel = slotsPerChannel;
        this.faults = section.faults();
    }

    /**
     * Empty, with faults, when something in the section is wrong; the caller finishes it.
     *
     * @param channels        0 when it is faulty, as {@code slotsPerChannel}
     */
    static Optional<MemorySupport> read(Section section, int channels, int slotsPerChannel) {
        return new MemorySectionReader(section, channels, slotsPerChannel).support();
    }

    private Optional<MemorySupport> support() {
        int before = faults.size();
        String generation = section.text("generation");
        Map<ModuleType, Integer> rankLimits = rankLimits();
        List<SpeedEntry> speeds = speeds();
        int capacities = section.wholeIfAny("max_distinct_capacities", CatalogBounds.CAPACITIES).orElse(DEFAULT_CAPACITIES);
        boolean mixedWidths = section.field("mixed_widths").flatMap(field -> field.truth(faults)).orElse(true);
        Bounds counts = channels > 0 && slotsPerChannel > 0
                ? Bounds.of(1, channels * slotsPerChannel, "modules") : CatalogBounds.MODULE_COUNT;
        Set<Integer> countsPerSocket = PlatformReader.distinct(section.list("counts_per_socket"), counts, faults);
        Optional<Section> modes = section.section("modes");
        OptionalDouble mirrored = modes.flatMap(found -> found.field(MemoryMode.MIRRORED.label())).map(this::mirrored)
                .orElse(OptionalDouble.empty());
        boolean rankSparing = modes.flatMap(found -> found.field(MemoryMode.RANK_SPARING.label()))
                .flatMap(field -> field.truth(faults)).orElse(false);
        modes.ifPresent(Section::finish);
        return faults.since(before) ? Optional.empty() : Optional.of(new MemorySupport(generation, channels, slotsPerChannel, rankLimits,
                speeds, new ModuleMix(capacities, mixedWidths, countsPerSocket), new MemoryModes(mirrored, rankSparing)));
    }

    private Map<ModuleType, Integer> rankLimits() {
        Map<ModuleType, Integer> limits = new EnumMap<>(ModuleType.class);
        for (Entry entry : section.entries("max_logical_ranks")) {
            Optional<ModuleType> type = entry.key().word(PartTables.TYPES, faults);
            Optional<Integer> limit = entry.value().whole(CatalogBounds.CHANNEL_RANKS, faults);
            if (type.isPresent() && limit.isPresent()) {
                limits.put(type.get(), limit.get());
            }
        }
        return limits;
    }

    private List<SpeedEntry> speeds() {
        int before = faults.size();
        List<Located<SpeedEntry>> entries = new ArrayList<>();
        for (Section row : section.sections("speeds")) {
            int rowBefore = faults.size();
            Optional<ModuleType> type = row.word("type", PartTables.TYPES);
            Set<Integer> ranks = PlatformReader.distinct(row.list("ranks"), CatalogBounds.RANKS, faults);
            List<Integer> mts = mts(row);
            row.finish();
            if (!faults.since(rowBefore)) {
                SpeedEntry entry = new SpeedEntry(type.orElseThrow(), ranks, mts);
                entries.forEach(earlier -> overlap(earlier, entry, row));
                entries.add(new Located<>(entry, row.place()));
            }
        }
        if (entries.isEmpty() && !faults.since(before)) {
            faults.add(section.place("speeds"), "memory.speeds must have at least one row: a type without one cannot be fitted");
        }
        return entries.stream().map(Located::value).toList();
    }

    private List<Integer> mts(Section row) {
        List<Field> fields = row.list("mts");
        if (!row.has("mts")) {
            row.missing("mts");
        }
        if (slotsPerChannel > 0 && fields.size() > slotsPerChannel) {
            faults.add(row.place("mts"), "mts has %s speeds, and a channel has slots for %s".formatted(fields.size(), slotsPerChannel));
        }
        return fields.stream().map(field -> field.whole(CatalogBounds.MTS, faults).orElse(0)).toList();
    }

    /** A row without ranks may stand beside rows that name theirs, which speak first. */
    private void overlap(Located<SpeedEntry> earlier, SpeedEntry entry, Section row) {
        Set<Integer> one = earlier.value().ranks();
        Set<Integer> other = entry.ranks();
        List<Integer> shared = other.stream().filter(one::contains).sorted().toList();
        if (earlier.value().type() == entry.type() && (one.isEmpty() && other.isEmpty() || !shared.isEmpty())) {
            faults.add(row.place(), "the speed of %s%s stands twice, first at line %s".formatted(entry.type(),
                    shared.isEmpty() ? "" : " with ranks " + shared, earlier.place().line()));
        }
    }

    private OptionalDouble mirrored(Field field) {
        return switch (field.text()) {
            case "true" -> OptionalDouble.of(DEFAULT_MIRRORED);
            case "false" -> OptionalDouble.empty();
            default -> field.decimal(CatalogBounds.FRACTION, faults)
                    .map(fraction -> OptionalDouble.of(fraction.doubleValue())).orElse(OptionalDouble.empty());
        };
    }
}
