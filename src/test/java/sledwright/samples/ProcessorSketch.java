package sledwright.samples;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import sledwright.domain.Processor;

/**
 * A processor in the making. As it starts: LK3, G1, ten cores, 2.2 GHz, 2.6 GHz on all cores, 85 W, memory at 2400 MT/s without a
 * limit on its size, two of them in a machine, throughput 200.
 */
public final class ProcessorSketch {

    private final String sku;
    private String socket = "LK3";
    private String generation = "G1";
    private int cores = 10;
    private double baseGhz = 2.2;
    private double allCoreGhz = 2.6;
    private double tdpW = 85;
    private int memoryMts = 2400;
    private OptionalInt maxMemoryGb = OptionalInt.empty();
    private int socketsMax = 2;
    private OptionalDouble throughput = OptionalDouble.of(200);

    ProcessorSketch(String sku) {
        this.sku = sku;
    }

    public ProcessorSketch socket(String name) {
        socket = name;
        return this;
    }

    public ProcessorSketch generation(String name) {
        generation = name;
        return this;
    }

    public ProcessorSketch cores(int number) {
        cores = number;
        return this;
    }

    public ProcessorSketch clocksGhz(double base, double allCore) {
        baseGhz = base;
        allCoreGhz = allCore;
        return this;
    }

    public ProcessorSketch tdpW(double watts) {
        tdpW = watts;
        return this;
    }

    public ProcessorSketch memoryMts(int mts) {
        memoryMts = mts;
        return this;
    }

    public ProcessorSketch maxMemoryGb(int gb) {
        maxMemoryGb = OptionalInt.of(gb);
        return this;
    }

    public ProcessorSketch socketsMax(int number) {
        socketsMax = number;
        return this;
    }

    public ProcessorSketch throughput(double figure) {
        throughput = OptionalDouble.of(figure);
        return this;
    }

    public ProcessorSketch noThroughput() {
        throughput = OptionalDouble.empty();
        return this;
    }

    public Processor make() {
        return new Processor(sku, sku, new Processor.Fit(socket, generation),
                new Processor.CoreFigures(cores, 2 * cores, baseGhz, allCoreGhz, tdpW), new Processor.MemoryReach(memoryMts, maxMemoryGb),
                socketsMax, throughput);
    }
}
