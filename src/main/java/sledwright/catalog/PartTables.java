package sledwright.catalog;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.Processor;
import sledwright.input.CsvReader.Columns;
import sledwright.input.Faults;
import sledwright.input.Fields;
import sledwright.input.Vocabulary;

/** Reads {@code processors.csv} and {@code memory.csv}. */
final class PartTables {

    static final Columns PROCESSOR_COLUMNS = new Columns(List.of("sku", "description", "socket", "generation", "cores", "threads",
            "base_ghz", "all_core_ghz", "tdp_w", "memory_mts", "max_memory_gb", "sockets_max", "throughput"),
            List.of("description", "max_memory_gb", "throughput"));
    static final Columns MODULE_COLUMNS = new Columns(List.of("sku", "description", "generation", "type", "capacity_gb", "ranks",
            "logical_ranks", "device_width", "speed_mts", "voltage", "power_w"), List.of("description", "logical_ranks"));
    static final Vocabulary<ModuleType> TYPES = Vocabulary.ofAnyCase(List.of(ModuleType.values()), ModuleType::label);
    private static final Vocabulary<Integer> WIDTHS = Vocabulary.of(List.of(4, 8, 16), String::valueOf);

    private PartTables() {
    }

    static Table<Processor> processors(TableRows rows, Faults faults) {
        return TableReader.read(rows, PartTables::processor, faults);
    }

    static Table<MemoryModule> modules(TableRows rows, Faults faults) {
        return TableReader.read(rows, PartTables::module, faults);
    }

    private static Processor processor(Fields row) {
        String sku = row.sku("sku");
        Processor processor = new Processor(sku, row.text("description", sku),
                new Processor.Fit(row.text("socket"), row.text("generation")),
                new Processor.CoreFigures(row.whole("cores", CatalogBounds.CORES), row.whole("threads", CatalogBounds.THREADS),
                        row.number("base_ghz", CatalogBounds.GHZ), row.number("all_core_ghz", CatalogBounds.GHZ),
                        row.number("tdp_w", CatalogBounds.TDP_W)),
                new Processor.MemoryReach(row.whole("memory_mts", CatalogBounds.MTS),
                        row.wholeIfAny("max_memory_gb", CatalogBounds.MAX_MEMORY_GB).map(OptionalInt::of).orElse(OptionalInt.empty())),
                row.whole("sockets_max", CatalogBounds.SOCKETS_MAX),
                row.numberIfAny("throughput", CatalogBounds.THROUGHPUT).map(OptionalDouble::of).orElse(OptionalDouble.empty()));
        if (processor.cores() > 0 && processor.figures().threads() > 0 && processor.figures().threads() < processor.cores()) {
            row.field("threads").ifPresent(field ->
                    field.fault("must be at least the %s cores".formatted(processor.cores()), row.faults()));
        }
        return processor;
    }

    private static MemoryModule module(Fields row) {
        String sku = row.sku("sku");
        ModuleType type = row.word("type", TYPES).orElse(null);
        int ranks = row.whole("ranks", CatalogBounds.RANKS);
        int logicalRanks = row.wholeIfAny("logical_ranks", CatalogBounds.RANKS).orElse(ranks);
        // Stacked modules count a logical rank for each layer; all others show at most what they carry.
        if (type != null && type != ModuleType.THREE_DS && ranks > 0 && logicalRanks > ranks) {
            row.field("logical_ranks").ifPresent(field ->
                    field.fault("must be at most %s, the ranks that the module carries".formatted(ranks), row.faults()));
        }
        return new MemoryModule(sku, row.text("description", sku), row.text("generation"),
                new MemoryModule.Kind(type, row.whole("capacity_gb", CatalogBounds.CAPACITY_GB), ranks,
                        row.word("device_width", WIDTHS).orElse(0)), logicalRanks,
                new MemoryModule.Rating(row.whole("speed_mts", CatalogBounds.MTS), row.number("voltage", CatalogBounds.VOLTAGE),
                        row.number("power_w", CatalogBounds.MODULE_W)));
    }
}
