package sledwright.generator;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import sledwright.domain.Requirements;
import sledwright.metrics.Figures;
import sledwright.metrics.Quantity;

/** A figure of one machine that money buys. */
public enum Axis {
    THROUGHPUT("throughput", "", false), WORK("work", "", false), CORES("cores", "cores", false),
    BANDWIDTH("memory bandwidth", "GB/s", false),
    MEMORY("usable memory", "GB", false), LOAD("load", "W", true);

    private final String noun;
    private final String unit;
    private final boolean lessIsBetter;

    Axis(String noun, String unit, boolean lessIsBetter) {
        this.noun = noun;
        this.unit = unit;
        this.lessIsBetter = lessIsBetter;
    }

    /** The figures that are compared: of a machine that has a workload its work stands for its throughput. */
    public static List<Axis> of(Requirements require) {
        Axis left = require.work().isOfWorkload() ? THROUGHPUT : WORK;
        return Arrays.stream(values()).filter(axis -> axis != left).toList();
    }

    /** The word of the command line and of JSON. */
    public String label() {
        return name().toLowerCase(Locale.ROOT);
    }

    public static Optional<Axis> named(String label) {
        return Arrays.stream(values()).filter(axis -> axis.label().equalsIgnoreCase(label)).findFirst();
    }

    /** What the figure is called in a sentence. */
    public String noun() {
        return noun;
    }

    /** Empty where it has none. */
    public String unit() {
        return unit;
    }

    /** The unit behind a figure or its name, with what stands between; empty where it has none or its name is its unit. */
    public String unitAfter(String between) {
        return unit.isEmpty() || unit.equals(noun) ? "" : between + unit;
    }

    public boolean lessIsBetter() {
        return lessIsBetter;
    }

    /** The figure of a machine. */
    public double of(Figures figures) {
        return switch (this) {
            case THROUGHPUT -> figures.throughput();
            case WORK -> figures.work();
            case CORES -> figures.cores();
            case BANDWIDTH -> figures.bandwidthGbs();
            case MEMORY -> figures.usableGb();
            case LOAD -> figures.loadW();
        };
    }

    double of(Combination build) {
        return switch (this) {
            // Of a request without a workload both are the same.
            case THROUGHPUT, WORK -> build.work();
            case CORES -> build.cores();
            case BANDWIDTH -> build.bandwidthGbs();
            case MEMORY -> build.usableGb();
            case LOAD -> build.loadW();
        };
    }

    /** Builds of the better figure first. */
    Comparator<Combination> betterFirst() {
        Comparator<Combination> lesserFirst = Comparator.comparingDouble(this::of);
        return lessIsBetter ? lesserFirst : lesserFirst.reversed();
    }

    /** All builds whose figure is better than another's. */
    Zone beyond(Combination build) {
        Zone all = Zone.EVERYTHING;
        double least = Quantity.betterThan(of(build), 0);
        return switch (this) {
            case THROUGHPUT, WORK -> new Zone(least, all.cores(), all.bandwidthGbs(), all.usableGb(), all.loadW());
            case CORES -> new Zone(all.work(), least, all.bandwidthGbs(), all.usableGb(), all.loadW());
            case BANDWIDTH -> new Zone(all.work(), all.cores(), least, all.usableGb(), all.loadW());
            case MEMORY -> new Zone(all.work(), all.cores(), all.bandwidthGbs(), least, all.loadW());
            case LOAD -> new Zone(all.work(), all.cores(), all.bandwidthGbs(), all.usableGb(), Quantity.lessThan(of(build), 0));
        };
    }
}
