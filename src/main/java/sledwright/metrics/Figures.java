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
 * @param wallW empty where no supply, or no efficiency, is known
 * @param work  how much of the request's workload it does; without one, its throughput
 */
public record Figures(ProcessorFigures processing, MemoryFigures memory, double loadW, OptionalDouble wallW, double work,
                      WorkDone.Held workHeldBy) {

    /**
     * What the processors give.
     *
     * @param throughput          sum over them
     * @param throughputEstimated whether any part of that is an estimate
     */
    public record ProcessorFigures(int processors, int cores, double baseGhz, double allCoreGhz, double throughput,
                               boolean throughputEstimated) {

        private ProcessorFigures worse(ProcessorFigures other) {
            return new ProcessorFigures(Math.min(processors, other.processors), Math.min(cores, other.cores),
                    Math.min(baseGhz, other.baseGhz), Math.min(allCoreGhz, other.allCoreGhz), Math.min(throughput, other.throughput),
                    throughputEstimated || other.throughputEstimated);
        }
    }

    /** What the memory gives. */
    public record MemoryFigures(int memoryGb, double usableGb, MemorySpeed speed, double bandwidthGbs, int spareSlots) {

        private MemoryFigures worse(MemoryFigures other) {
            return new MemoryFigures(Math.min(memoryGb, other.memoryGb), Math.min(usableGb, other.usableGb),
                    speed.mts() <= other.speed.mts() ? speed : other.speed, Math.min(bandwidthGbs, other.bandwidthGbs),
                    Math.min(spareSlots, other.spareSlots));
        }
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
        return new Figures(new ProcessorFigures(build.processors().size(), build.cores(), none ? 0 : baseGhz, none ? 0 : allCoreGhz,
                Quantity.rounded(throughput), estimated),
                new MemoryFigures(build.modules().values().stream().mapToInt(MemoryModule::capacityGb).sum(),
                        UsableMemory.gb(build, request.require().mode()), speed, Bandwidth.ofMachineGbs(build, speed.mts()),
                        SpareSlots.of(build)), loadW,
                build.supply().map(supply -> PowerDraw.wallW(loadW, supply, request.limit())).orElse(OptionalDouble.empty()),
                WorkDone.of(ofCores, sweptGbs, workload), WorkDone.heldBy(ofCores, sweptGbs, workload));
    }

    /**
     * What each of several machines reaches: of every figure the least, of the watts the most. Alike modules may differ in rated
     * speed and watts, so one machine may run its memory faster than another, or draw more.
     */
    public static Figures ofEach(List<Figures> machines) {
        return machines.stream().reduce(Figures::worse).orElseThrow();
    }

    private Figures worse(Figures other) {
        return new Figures(processing.worse(other.processing), memory.worse(other.memory), Math.max(loadW, other.loadW),
                wallW.isPresent() && other.wallW.isPresent()
                        ? OptionalDouble.of(Math.max(wallW.getAsDouble(), other.wallW.getAsDouble())) : OptionalDouble.empty(),
                Math.min(work, other.work), work <= other.work ? workHeldBy : other.workHeldBy);
    }

    public int processors() {
        return processing.processors();
    }

    public int cores() {
        return processing.cores();
    }

    public double baseGhz() {
        return processing.baseGhz();
    }

    public double allCoreGhz() {
        return processing.allCoreGhz();
    }

    public double throughput() {
        return processing.throughput();
    }

    public boolean throughputEstimated() {
        return processing.throughputEstimated();
    }

    public int memoryGb() {
        return memory.memoryGb();
    }

    public double usableGb() {
        return memory.usableGb();
    }

    public MemorySpeed speed() {
        return memory.speed();
    }

    public double bandwidthGbs() {
        return memory.bandwidthGbs();
    }

    public int spareSlots() {
        return memory.spareSlots();
    }

    public double gbPerCore() {
        return perCore(usableGb(), cores());
    }

    public double gbsPerCore() {
        return perCore(bandwidthGbs(), cores());
    }

    /** A figure shared over the fitted cores. */
    public static double perCore(double figure, int cores) {
        return cores == 0 ? 0 : Quantity.rounded(figure / cores);
    }
}
