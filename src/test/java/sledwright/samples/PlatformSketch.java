package sledwright.samples;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import sledwright.domain.Board;
import sledwright.domain.CoolingKit;
import sledwright.domain.Expansion;
import sledwright.domain.MemoryModes;
import sledwright.domain.MemorySupport;
import sledwright.domain.ModuleMix;
import sledwright.domain.ModuleType;
import sledwright.domain.Platform;
import sledwright.domain.Power;
import sledwright.domain.CoolingAndPower;
import sledwright.domain.ProcessorSupport;
import sledwright.domain.SpeedEntry;
import sledwright.domain.Supply;
import sledwright.domain.Thermal;

/**
 * A platform in the making. As it starts: two LK3 sockets of at most 150 W, DDR4 on four channels of three slots, RDIMMs of one
 * and two ranks at 2400/2400/1866, of four at 2133/2133, LRDIMMs at 2400/2400/2133, eight logical ranks a channel, 85 W of its own,
 * a low kit of 105 W and a tall one of 150 W that covers nothing, inlet 35 C up to 105 W and 30 C up to 150 W, one pair of supplies.
 */
public final class PlatformSketch {

    private String sku = "BOX";
    private Set<String> generations = Set.of("G1");
    private List<Integer> counts = List.of(1, 2);
    private double maxTdpW = 150;
    private String memoryGeneration = "DDR4";
    private int channels = 4;
    private int slotsPerChannel = 3;
    private final Map<ModuleType, Integer> rankLimits = new HashMap<>(Map.of(ModuleType.RDIMM, 8, ModuleType.LRDIMM, 8));
    private List<SpeedEntry> speeds = List.of(
            row(ModuleType.RDIMM, Set.of(1, 2), 2400, 2400, 1866),
            row(ModuleType.RDIMM, Set.of(4), 2133, 2133),
            row(ModuleType.LRDIMM, Set.of(), 2400, 2400, 2133));
    private int maxDistinctCapacities = 2;
    private boolean mixedWidths = true;
    private Set<Integer> countsPerSocket = Set.of();
    private OptionalDouble mirroredFraction = OptionalDouble.of(0.5);
    private boolean rankSparing = true;
    private List<String> slotNames = List.of();
    private List<CoolingKit> cooling = List.of(Samples.LOW, Samples.TALL);
    private Thermal thermal = new Thermal(950, 300,
            List.of(new Thermal.InletRow(105, 35, Set.of()), new Thermal.InletRow(150, 30, Set.of())));
    private double baseW = 85;
    private OptionalDouble budgetW = OptionalDouble.empty();
    private List<Supply> supplies = List.of(Samples.PAIR);
    private Expansion expansion = Expansion.NONE;

    /** A row of a speed table; no ranks: it serves every count. */
    public static SpeedEntry row(ModuleType type, Set<Integer> ranks, Integer... mts) {
        return new SpeedEntry(type, ranks, Arrays.asList(mts));
    }

    public PlatformSketch sku(String value) {
        sku = value;
        return this;
    }

    public PlatformSketch generations(String... names) {
        generations = Set.of(names);
        return this;
    }

    public PlatformSketch counts(Integer... numbers) {
        counts = List.of(numbers);
        return this;
    }

    public PlatformSketch maxTdpW(double watts) {
        maxTdpW = watts;
        return this;
    }

    public PlatformSketch memoryGeneration(String name) {
        memoryGeneration = name;
        return this;
    }

    /** Channels of a socket, and slots of each. */
    public PlatformSketch channels(int number, int slotsEach) {
        channels = number;
        slotsPerChannel = slotsEach;
        return this;
    }

    public PlatformSketch rankLimit(ModuleType type, int logicalRanks) {
        rankLimits.put(type, logicalRanks);
        return this;
    }

    public PlatformSketch speeds(SpeedEntry... rows) {
        speeds = List.of(rows);
        return this;
    }

    public PlatformSketch distinctCapacities(int most) {
        maxDistinctCapacities = most;
        return this;
    }

    public PlatformSketch forbidMixedWidths() {
        mixedWidths = false;
        return this;
    }

    public PlatformSketch countsPerSocket(Integer... numbers) {
        countsPerSocket = Set.of(numbers);
        return this;
    }

    /** The share that mirroring leaves; empty: no mirroring. */
    public PlatformSketch mirrored(OptionalDouble fraction) {
        mirroredFraction = fraction;
        return this;
    }

    public PlatformSketch rankSparing(boolean offered) {
        rankSparing = offered;
        return this;
    }

    public PlatformSketch slotNames(List<String> names) {
        slotNames = new ArrayList<>(names);
        return this;
    }

    public PlatformSketch cooling(CoolingKit... kits) {
        cooling = List.of(kits);
        return this;
    }

    public PlatformSketch thermal(Thermal table) {
        thermal = table;
        return this;
    }

    public PlatformSketch baseW(double watts) {
        baseW = watts;
        return this;
    }

    public PlatformSketch budgetW(double watts) {
        budgetW = OptionalDouble.of(watts);
        return this;
    }

    /** The supplies to choose from; none: the enclosure feeds the machine. */
    public PlatformSketch supplies(Supply... options) {
        supplies = List.of(options);
        return this;
    }

    /** Bays, slots and needs. */
    public PlatformSketch expansion(Expansion takes) {
        expansion = takes;
        return this;
    }

    public Platform make() {
        ProcessorSupport processors = new ProcessorSupport("LK3", generations, counts, maxTdpW, Collections.max(counts));
        MemorySupport memory = new MemorySupport(memoryGeneration, channels, slotsPerChannel, rankLimits, speeds,
                new ModuleMix(maxDistinctCapacities, mixedWidths, countsPerSocket), new MemoryModes(mirroredFraction, rankSparing));
        return new Platform(sku, sku, processors, memory,
                new Board(processors.sockets(), channels, slotsPerChannel, "outermost", slotNames),
                new CoolingAndPower(cooling, thermal, new Power(baseW, budgetW, supplies)), expansion);
    }
}
