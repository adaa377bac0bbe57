package sledwright.metrics;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import sledwright.domain.Build;
import sledwright.domain.MemoryModule;
import sledwright.domain.Request;
import sledwright.domain.Workload;

/**
 * What one machine is worth, each figure to a millionth.
 *
 * @param throughput          sum over its processors
 * @param throughputEstimated whether any part of that is an estimate
 * @param work                how much of the request's workload it does; without one, its throughput
 * @param wallW               empty where no supply, or no efficiency, is known
 */
public record Figures(int processors, int cores, double baseGhz, double allCoreGhz, int memoryGb, double usableGb,
                      MemorySpeed speed, double bandwidthGbs, double throughput, boolean throughputEstimated,
                      double loadW, OptionalDouble wallW, int spareSlots, double work, WorkDone.Held workHeldBy) {

    /** Figures of a machine that is to do nothing in particular, whose work is its throughput. */
    public Figures(int processors, int cores, double baseGhz, double allCoreGhz, int memoryGb, double usableGb, MemorySpeed speed,
                   double bandwidthGbs, double throughput, boolean throughputEstimated, double loadW, OptionalDouble wallW,
                   int spareSlots) {
        this(processors, cores, baseGhz, allCoreGhz, memoryGb, usableGb, speed, bandwidthGbs, throughput, throughputEstimated, loadW,
                wallW, spareSlots, throughput, WorkDone.Held.NOTHING);
    }

    /**
     * The figures of a build at the request's site and in its memory mode.
     *
     * @param factors generation -> throughput of one core at one GHz
     */
    public static Figures of(Build build, Request request, Map<String, Double> factors) {
        MemorySpeed speed = MemorySpeed.of(build);
        double loadW = PowerDraw.loadW(build);
        double throughput = 0;
        boolean estimated = false;
        double baseGhz = Double.POSITIVE_INFINITY;
        double allCoreGhz = Double.POSITIVE_INFINITY;
        for (var processor : build.processors()) {
            Throughput one = Throughput.of(processor, factors);
            throughput += one.value();
            estimated |= one.estimated();
            baseGhz = Math.min(baseGhz, processor.baseGhz());
            allCoreGhz = Math.min(allCoreGhz, processor.allCoreGhz());
        }
        boolean none = build.processors().isEmpty();
        Workload workload = request.require().work().workload();
        double ofCores = WorkDone.ofCores(throughput, build.cores(), workload);
        double sweptGbs = Bandwidth.unroundedGbs(build, speed.mts());
        return new Figures(build.processors().size(), build.cores(), none ? 0 : baseGhz, none ? 0 : allCoreGhz,
                build.modules().values().stream().mapToInt(MemoryModule::capacityGb).sum(),
                UsableMemory.gb(build, request.require().mode()), speed, Bandwidth.ofMachineGbs(build, speed.mts()),
                Quantity.rounded(throughput), estimated, loadW,
                build.supply().map(supply -> PowerDraw.wallW(loadW, supply, request.limit())).orElse(OptionalDouble.empty()),
                SpareSlots.of(build), WorkDone.of(ofCores, sweptGbs, workload), WorkDone.heldBy(ofCores, sweptGbs, workload));
    }

    /**
     * What each of several machines reaches: of every figure the least, of the watts the most. Alike modules may differ in rated
     * speed and watts, so one machine may run its memory faster than another, or draw more.
     */
    public static Figures ofEach(List<Figures> machines) {
        return machines.stream().reduce(Figures::worse).orElseThrow();
    }

    private Figures worse(Figures other) {
        boolean slower = speed.mts() <= other.speed.mts();
        return new Figures(Math.min(processors, other.processors), Math.min(cores, other.cores), Math.min(baseGhz, other.baseGhz),
                Math.min(allCoreGhz, other.allCoreGhz), Math.min(memoryGb, other.memoryGb), Math.min(usableGb, other.usableGb),
                slower ? speed : other.speed, Math.min(bandwidthGbs, other.bandwidthGbs), Math.min(throughput, other.throughput),
                throughputEstimated || other.throughputEstimated, Math.max(loadW, other.loadW),
                wallW.isPresent() && other.wallW.isPresent()
                        ? OptionalDouble.of(Math.max(wallW.getAsDouble(), other.wallW.getAsDouble())) : OptionalDouble.empty(),
                Math.min(spareSlots, other.spareSlots), Math.min(work, other.work), work <= other.work ? workHeldBy : other.workHeldBy);
    }

    /** Usable GB for each core. */
    public double gbPerCore() {
        return perCore(usableGb, cores);
    }

    /** GB/s for each core. */
    public double gbsPerCore() {
        return perCore(bandwidthGbs, cores);
    }

    /** A figure shared over the fitted cores. */
    public static double perCore(double figure, int cores) {
        return cores == 0 ? 0 : Quantity.rounded(figure / cores);
    }
}
