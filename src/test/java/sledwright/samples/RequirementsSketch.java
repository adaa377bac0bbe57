package sledwright.samples;

import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryNeeds;
import sledwright.domain.MemoryWish;
import sledwright.domain.ProcessorNeeds;
import sledwright.domain.Requirements;
import sledwright.domain.WorkWish;
import sledwright.domain.Workload;

/** The least figures of a machine in the making. */
public final class RequirementsSketch {

    private int processors;
    private int cores;
    private double memoryGb;
    private double bandwidthGbs;
    private double throughput;
    private double baseGhz;
    private double allCoreGhz;
    private double gbPerCore;
    private double gbsPerCore;
    private int spareSlots;
    private MemoryMode mode = MemoryMode.INDEPENDENT;
    private MemoryWish populated = MemoryWish.NONE;
    private WorkWish work = WorkWish.NONE;

    public RequirementsSketch processors(int exactly) {
        processors = exactly;
        return this;
    }

    public RequirementsSketch cores(int least) {
        cores = least;
        return this;
    }

    public RequirementsSketch memoryGb(double least) {
        memoryGb = least;
        return this;
    }

    public RequirementsSketch bandwidthGbs(double least) {
        bandwidthGbs = least;
        return this;
    }

    public RequirementsSketch throughput(double least) {
        throughput = least;
        return this;
    }

    public RequirementsSketch baseGhz(double least) {
        baseGhz = least;
        return this;
    }

    public RequirementsSketch allCoreGhz(double least) {
        allCoreGhz = least;
        return this;
    }

    public RequirementsSketch gbPerCore(double least) {
        gbPerCore = least;
        return this;
    }

    public RequirementsSketch gbsPerCore(double least) {
        gbsPerCore = least;
        return this;
    }

    public RequirementsSketch spareSlots(int least) {
        spareSlots = least;
        return this;
    }

    public RequirementsSketch mode(MemoryMode value) {
        mode = value;
        return this;
    }

    public RequirementsSketch work(double least, Workload workload) {
        work = new WorkWish(least, workload);
        return this;
    }

    public RequirementsSketch balanced() {
        populated = populated.withBalanced(true);
        return this;
    }

    public RequirementsSketch oneModulePart() {
        populated = populated.withOnePart(true);
        return this;
    }

    public Requirements make() {
        return new Requirements(new ProcessorNeeds(processors, cores, throughput, baseGhz, allCoreGhz),
                new MemoryNeeds(memoryGb, bandwidthGbs, gbPerCore, gbsPerCore, spareSlots, mode, populated), work);
    }
}
