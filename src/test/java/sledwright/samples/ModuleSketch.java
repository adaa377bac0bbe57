package sledwright.samples;

import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;

/** A memory module in the making. As it starts: DDR4 RDIMM of two ranks of x4 devices, 2400 MT/s, 1.2 V, 4 W. */
public final class ModuleSketch {

    private final String sku;
    private final int capacityGb;
    private String generation = "DDR4";
    private ModuleType type = ModuleType.RDIMM;
    private int ranks = 2;
    private int logicalRanks = 2;
    private int deviceWidth = 4;
    private int speedMts = 2400;
    private double powerW = 4;

    ModuleSketch(String sku, int capacityGb) {
        this.sku = sku;
        this.capacityGb = capacityGb;
    }

    public ModuleSketch generation(String name) {
        generation = name;
        return this;
    }

    public ModuleSketch type(ModuleType value) {
        type = value;
        return this;
    }

    /** Physical ranks, all of which the controller sees. */
    public ModuleSketch ranks(int number) {
        return ranks(number, number);
    }

    /** Physical ranks, and those that the controller sees. */
    public ModuleSketch ranks(int physical, int logical) {
        ranks = physical;
        logicalRanks = logical;
        return this;
    }

    public ModuleSketch width(int bits) {
        deviceWidth = bits;
        return this;
    }

    public ModuleSketch mts(int speed) {
        speedMts = speed;
        return this;
    }

    public ModuleSketch powerW(double watts) {
        powerW = watts;
        return this;
    }

    public MemoryModule make() {
        return new MemoryModule(sku, sku, generation, new MemoryModule.Kind(type, capacityGb, ranks, deviceWidth), logicalRanks,
                new MemoryModule.Rating(speedMts, 1.2, powerW));
    }
}
