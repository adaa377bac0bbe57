package sledwright.samples;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sledwright.domain.Availability;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.CoolingKit;
import sledwright.domain.Labour;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Supply;

/** Invented parts and machines that tests start from; each test states what it changes. */
public final class Samples {

    public static final CoolingKit LOW = new CoolingKit("LOW", "low heat sink", 105, List.of());
    public static final CoolingKit TALL = new CoolingKit("TALL", "tall heat sink", 150, List.of());
    public static final Supply PAIR = supply("PAIR", 2, 1, 750, 650, Map.of(10, 82.0, 20, 88.0, 50, 92.0, 100, 88.0));

    public static final Processor P10 = processor("P10").make();

    public static final MemoryModule R8 = module("R8", 8).ranks(1).width(8).make();
    public static final MemoryModule R16 = module("R16", 16).make();
    public static final MemoryModule R32 = module("R32", 32).make();
    public static final MemoryModule Q32 = module("Q32", 32).ranks(4).make();
    public static final MemoryModule L64 = module("L64", 64).type(ModuleType.LRDIMM).ranks(4, 2).make();

    /** Throughput of one core at one GHz, by generation. */
    public static final Map<String, Double> FACTORS = Map.of("G1", 8.0);

    private Samples() {
    }

    public static PlatformSketch platform() {
        return new PlatformSketch();
    }

    public static ProcessorSketch processor(String sku) {
        return new ProcessorSketch(sku);
    }

    public static ModuleSketch module(String sku, int capacityGb) {
        return new ModuleSketch(sku, capacityGb);
    }

    /** @param efficiency percent of load -> percent */
    public static Supply supply(String sku, int count, int redundant, double watts, double lowLineWatts, Map<Integer, Double> efficiency) {
        return new Supply(sku, sku, count, redundant, watts, lowLineWatts, new TreeMap<>(efficiency));
    }

    /** A machine on the sample platform. */
    public static MachineSketch machine() {
        return machine(platform().make());
    }

    public static MachineSketch machine(Platform platform) {
        return new MachineSketch(platform);
    }

    /** New units, here now, at one price in minor units. */
    public static Lot lot(String sku, String name, int available, long unitPrice) {
        return lot(sku, name, available, 0, Condition.NEW, Map.of(1, unitPrice));
    }

    /** @param prices units from which the price holds -> price of one, minor units */
    public static Lot lot(String sku, String name, int available, int leadDays, Condition condition, Map<Integer, Long> prices) {
        return new Lot(sku, name, "sample shop", condition, new Availability(available, leadDays),
                prices.entrySet().stream() .map(price -> new Lot.PriceBreak(price.getKey(), price.getValue(), OptionalLong.empty())).toList(),
                false);
    }

    /** A catalogue in euro whose labour is free. */
    public static Catalog catalog(List<Platform> platforms, List<Processor> processors, List<MemoryModule> modules, Lot... lots) {
        return catalog(new Labour(0, 0), platforms, processors, modules, lots);
    }

    public static Catalog catalog(Labour labour, List<Platform> platforms, List<Processor> processors, List<MemoryModule> modules, Lot... lots) {
        return Shops.of("sample", Currency.getInstance("EUR"), LocalDate.of(2025, 1, 1), labour, FACTORS, platforms,
                processors, modules, Arrays.stream(lots).collect(Collectors.groupingBy(Lot::sku)));
    }

    /** Requirements in the making; every figure that is not set asks for nothing. */
    public static RequirementsSketch require() {
        return new RequirementsSketch();
    }

    /** Limits in the making; every figure that is not set limits nothing. */
    public static LimitsSketch limit() {
        return new LimitsSketch();
    }
}
