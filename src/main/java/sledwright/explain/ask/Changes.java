package sledwright.explain.ask;

import java.util.OptionalDouble;
import java.util.Set;
import sledwright.domain.Condition;
import sledwright.domain.Limits;
import sledwright.domain.MemoryMode;
import sledwright.domain.Requirements;
import sledwright.rules.target.Target;

/** Requirements and limits with one figure replaced. */
public final class Changes {

    private Changes() {
    }

    public static Requirements least(Requirements before, Target target, double least) {
        return new Requirements(before.processors(),
                (int) figure(Target.CORES, target, least, before),
                figure(Target.MEMORY_CAPACITY, target, least, before),
                figure(Target.BANDWIDTH, target, least, before),
                figure(Target.THROUGHPUT, target, least, before),
                figure(Target.BASE_CLOCK, target, least, before),
                figure(Target.ALL_CORE_CLOCK, target, least, before),
                figure(Target.MEMORY_PER_CORE, target, least, before),
                figure(Target.BANDWIDTH_PER_CORE, target, least, before),
                (int) figure(Target.SPARE_SLOTS, target, least, before), before.mode());
    }

    private static double figure(Target one, Target changed, double least, Requirements before) {
        return one == changed ? least : one.least(before);
    }

    public static Requirements processors(Requirements before, int exactly) {
        return new Requirements(exactly, before.cores(), before.memoryGb(), before.bandwidthGbs(), before.throughput(), before.baseGhz(),
                before.allCoreGhz(), before.gbPerCore(), before.gbsPerCore(), before.spareSlots(), before.mode());
    }

    public static Requirements mode(Requirements before, MemoryMode mode) {
        return new Requirements(before.processors(), before.cores(), before.memoryGb(), before.bandwidthGbs(), before.throughput(),
                before.baseGhz(), before.allCoreGhz(), before.gbPerCore(), before.gbsPerCore(), before.spareSlots(), mode);
    }

    public static Limits powerW(Limits before, OptionalDouble most) {
        return new Limits(before.price(), most, before.leadDays(), before.inletC(), before.altitudeM(), before.mainsV(),
                before.conditions());
    }

    public static Limits inletC(Limits before, OptionalDouble site) {
        return new Limits(before.price(), before.powerW(), before.leadDays(), site, before.altitudeM(), before.mainsV(),
                before.conditions());
    }

    public static Limits altitudeM(Limits before, double site) {
        return new Limits(before.price(), before.powerW(), before.leadDays(), before.inletC(), site, before.mainsV(), before.conditions());
    }

    public static Limits mainsV(Limits before, OptionalDouble site) {
        return new Limits(before.price(), before.powerW(), before.leadDays(), before.inletC(), before.altitudeM(), site,
                before.conditions());
    }

    public static Limits conditions(Limits before, Set<Condition> accepted) {
        return new Limits(before.price(), before.powerW(), before.leadDays(), before.inletC(), before.altitudeM(),
                before.mainsV(), accepted);
    }
}
