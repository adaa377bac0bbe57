package sledwright.rules.target;

import java.util.List;
import java.util.function.ToDoubleFunction;
import sledwright.domain.MemoryNeeds;
import sledwright.domain.ProcessorNeeds;
import sledwright.domain.Requirements;
import sledwright.domain.WorkWish;
import sledwright.metrics.Figures;
import sledwright.metrics.Quantity;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** A figure of one machine that must reach the request's; 0 asks for nothing. */
public final class Target extends Rule<Machine> {

    public static final Target CORES = new Target("cores", "require.cores", "number of cores", "",
            Figures::cores, Requirements::cores);
    public static final Target BASE_CLOCK = new Target("base-clock", "require.base_ghz", "base clock", " GHz",
            Figures::baseGhz, Requirements::baseGhz);
    public static final Target ALL_CORE_CLOCK = new Target("all-core-clock", "require.all_core_ghz", "all-core clock", " GHz",
            Figures::allCoreGhz, Requirements::allCoreGhz);
    public static final Target MEMORY_CAPACITY = new Target("memory-capacity", "require.memory_gb", "usable memory", " GB",
            Figures::usableGb, Requirements::memoryGb);
    public static final Target BANDWIDTH = new Target("bandwidth", "require.bandwidth_gbs", "memory bandwidth", " GB/s",
            Figures::bandwidthGbs, Requirements::bandwidthGbs);
    public static final Target THROUGHPUT = new Target("throughput", "require.throughput", "throughput", "",
            Figures::throughput, Requirements::throughput);
    public static final Target WORK = new Target("work", "require.work", "work", "",
            Figures::work, require -> require.work().least());
    public static final Target MEMORY_PER_CORE = new Target("memory-per-core", "require.gb_per_core", "usable memory per core", " GB",
            Figures::gbPerCore, Requirements::gbPerCore);
    public static final Target BANDWIDTH_PER_CORE = new Target("bandwidth-per-core", "require.gbs_per_core", "bandwidth per core", " GB/s",
            Figures::gbsPerCore, Requirements::gbsPerCore);
    public static final Target SPARE_SLOTS = new Target("spare-slots", "require.spare_slots", "number of spare slots", "",
            Figures::spareSlots, Requirements::spareSlots);

    /** All targets of this form. */
    public static final List<Target> ALL = List.of(CORES, BASE_CLOCK, ALL_CORE_CLOCK, MEMORY_CAPACITY, BANDWIDTH,
            THROUGHPUT, WORK, MEMORY_PER_CORE, BANDWIDTH_PER_CORE, SPARE_SLOTS);

    private static final double MILLIONTH = 1e-6;

    private final String key;
    private final String noun;
    private final String unit;
    private final ToDoubleFunction<Figures> figure;
    private final ToDoubleFunction<Requirements> least;

    private Target(String id, String key, String noun, String unit, ToDoubleFunction<Figures> figure,
                   ToDoubleFunction<Requirements> least) {
        super(id, "The " + noun + " of a machine reaches the request's figure.", key);
        this.key = key;
        this.noun = noun;
        this.unit = unit;
        this.figure = figure;
        this.least = least;
    }

    /** The request's key. */
    public String key() {
        return key;
    }

    /** By how much two different figures of it differ at least. */
    public double grain() {
        return this == CORES || this == SPARE_SLOTS ? 1 : MILLIONTH;
    }

    /** What the figure is called in a sentence. */
    public String noun() {
        return noun;
    }

    /** The unit behind a number, with the space before it; empty where there is none. */
    public String unit() {
        return unit;
    }

    /** The machine's figure. */
    public double figure(Figures figures) {
        return figure.applyAsDouble(figures);
    }

    /** The request's figure; 0 asks for nothing. */
    public double least(Requirements require) {
        return least.applyAsDouble(require);
    }

    /** The requirements with another figure of this target's. */
    public Requirements asking(Requirements require, double figure) {
        ToDoubleFunction<Target> asked = target -> target == this ? figure : target.least(require);
        return new Requirements(
                new ProcessorNeeds(require.processors(), (int) asked.applyAsDouble(CORES), asked.applyAsDouble(THROUGHPUT),
                        asked.applyAsDouble(BASE_CLOCK), asked.applyAsDouble(ALL_CORE_CLOCK)),
                new MemoryNeeds(asked.applyAsDouble(MEMORY_CAPACITY), asked.applyAsDouble(BANDWIDTH),
                        asked.applyAsDouble(MEMORY_PER_CORE), asked.applyAsDouble(BANDWIDTH_PER_CORE),
                        (int) asked.applyAsDouble(SPARE_SLOTS), require.mode(), require.populated()),
                new WorkWish(asked.applyAsDouble(WORK), require.work().workload()));
    }

    /** Whether a figure of this target's kind reaches the request's. */
    public boolean allows(Requirements require, double reached) {
        return Quantity.reaches(reached, least(require));
    }

    @Override
    public List<Violation> judge(Machine machine) {
        double reached = figure(machine.figures());
        return allows(machine.request().require(), reached) ? List.of() : List.of(broken("", "The %s is %s%s; the request asks for %s%s.",
                noun, Numbers.plain(reached), unit, Numbers.plain(least(machine.request().require())), unit));
    }
}
