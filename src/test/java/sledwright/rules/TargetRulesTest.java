package sledwright.rules;

import static sledwright.rules.Examples.offender;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.R32;
import static sledwright.samples.Samples.limit;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.platform;
import static sledwright.samples.Samples.processor;
import static sledwright.samples.Samples.require;

import sledwright.domain.CoolingKit;
import sledwright.domain.MemoryMode;
import sledwright.domain.Requirements;
import sledwright.domain.Workload;
import sledwright.rules.target.PowerLimit;
import sledwright.rules.target.ProcessorCount;
import sledwright.samples.MachineSketch;
import sledwright.samples.RequirementsSketch;

import java.util.List;

/**
 * Where nothing else is said the machine has two processors of ten cores (2.2 GHz, 2.6 GHz on all cores, throughput 200 each)
 * and eight modules of 16 GB, two ranks, 2400 MT/s, one on each of its eight channels.
 */
class TargetRulesTest extends RuleGroup {

    @ForRule("cores")
    Examples cores() {
        return offender("20 where 21 are asked for", asked(require().cores(21)))
                .says("", "The number of cores is 20; the request asks for 21.")
                .innocent("20 where 20 are asked for", asked(require().cores(20)))
                .innocent("nothing asked", asked(require()));
    }

    @ForRule("base-clock")
    Examples baseClock() {
        return offender("2.2 GHz where 2.21 is asked for", asked(require().baseGhz(2.21)))
                .says("", "The base clock is 2.2 GHz; the request asks for 2.21 GHz.")
                .innocent("2.2 GHz where 2.2 is asked for", asked(require().baseGhz(2.2)));
    }

    @ForRule("all-core-clock")
    Examples allCoreClock() {
        return offender("2.6 GHz where 2.7 is asked for", asked(require().allCoreGhz(2.7)))
                .says("", "The all-core clock is 2.6 GHz; the request asks for 2.7 GHz.")
                .innocent("2.6 GHz where 2.6 is asked for", asked(require().allCoreGhz(2.6)));
    }

    @ForRule("memory-capacity")
    Examples memoryCapacity() {
        return offender("128 GB where 129 are asked for", asked(require().memoryGb(129)))
                .says("", "The usable memory is 128 GB; the request asks for 129 GB.")
                .andOffender("64 of 128 GB usable when mirrored", asked(require().memoryGb(65).mode(MemoryMode.MIRRORED)))
                .says("", "The usable memory is 64 GB; the request asks for 65 GB.")
                .andOffender("64 of 128 GB usable when every only module spares one of two ranks",
                        asked(require().memoryGb(128).mode(MemoryMode.RANK_SPARING)))
                .says("", "The usable memory is 64 GB; the request asks for 128 GB.")
                .innocent("128 GB where 128 are asked for", asked(require().memoryGb(128)))
                .innocent("64 GB usable when mirrored", asked(require().memoryGb(64).mode(MemoryMode.MIRRORED)));
    }

    /** 8 channels x 2400 x 8 / 1000 = 153.6; with one channel of two sizes: (32 + 16 + 16 + 16) / 32 of 19.2, twice. */
    @ForRule("bandwidth")
    Examples bandwidth() {
        return offender("153.6 GB/s where 153.7 are asked for", asked(require().bandwidthGbs(153.7)))
                .says("", "The memory bandwidth is 153.6 GB/s; the request asks for 153.7 GB/s.")
                .andOffender("96 GB/s of an unbalanced population where 97 are asked for", unbalanced(97))
                .says("", "The memory bandwidth is 96 GB/s; the request asks for 97 GB/s.")
                .innocent("153.6 GB/s where 153.6 are asked for", asked(require().bandwidthGbs(153.6)))
                .innocent("96 GB/s of the unbalanced population", unbalanced(96));
    }

    /** A tenth runs on one core: 400 / (20 x 0.1 + 0.9) = 137.931; at 2 GB a unit the 153.6 GB/s feed 76.8. */
    @ForRule("work")
    Examples work() {
        Workload serial = new Workload("serial", 0.9, 0, 0);
        Workload hungry = new Workload("hungry", 0.9, 2, 0);
        return offender("137.931 where 138 is asked for", asked(require().work(138, serial)))
                .says("", "The work is 137.93; the request asks for 138.")
                .andOffender("76.8 that memory feeds where 77 is asked for", asked(require().work(77, hungry)))
                .says("", "The work is 76.8; the request asks for 77.")
                .andOffender("400 of throughput where 401 is asked for of nothing in particular", asked(require().work(401, Workload.NONE)))
                .says("", "The work is 400; the request asks for 401.")
                .innocent("137.931034 where that is asked for", asked(require().work(137.931034, serial)))
                .innocent("76.8 where 76.8 is asked for", asked(require().work(76.8, hungry)))
                .innocent("400 of throughput", asked(require().work(400, Workload.NONE)));
    }

    @ForRule("throughput")
    Examples throughput() {
        MachineSketch estimated = machine().processors(2, processor("EST").noThroughput().make()).channels(4, R16)
                .require(require().throughput(416.01).make());
        return offender("400 where 400.5 is asked for", asked(require().throughput(400.5)))
                .says("", "The throughput is 400; the request asks for 400.5.")
                .andOffender("an estimate of 2 x 10 x 2.6 x 8 = 416", estimated)
                .says("", "The throughput is 416; the request asks for 416.01.")
                .innocent("400 where 400 is asked for", asked(require().throughput(400)));
    }

    @ForRule("memory-per-core")
    Examples memoryPerCore() {
        return offender("6.4 GB where 6.41 are asked for", asked(require().gbPerCore(6.41)))
                .says("", "The usable memory per core is 6.4 GB; the request asks for 6.41 GB.")
                .andOffender("3.2 GB usable when mirrored", asked(require().gbPerCore(6.4).mode(MemoryMode.MIRRORED)))
                .says("", "The usable memory per core is 3.2 GB; the request asks for 6.4 GB.")
                .innocent("6.4 GB where 6.4 are asked for", asked(require().gbPerCore(6.4)));
    }

    @ForRule("bandwidth-per-core")
    Examples bandwidthPerCore() {
        return offender("7.68 GB/s where 7.7 are asked for", asked(require().gbsPerCore(7.7)))
                .says("", "The bandwidth per core is 7.68 GB/s; the request asks for 7.7 GB/s.")
                .innocent("7.68 GB/s where 7.68 are asked for", asked(require().gbsPerCore(7.68)))
                .innocent("a mode does not change it", asked(require().gbsPerCore(7.68).mode(MemoryMode.MIRRORED)));
    }

    @ForRule("spare-slots")
    Examples spareSlots() {
        CoolingKit deep = new CoolingKit("DEEP", "deep heat sink", 150, List.of("1A3", "1B3", "2A3", "2B3"));
        Requirements sixteen = require().spareSlots(16).make();
        return offender("16 of 24 slots free where 17 are asked for", asked(require().spareSlots(17)))
                .says("", "The number of spare slots is 16; the request asks for 17.")
                .andOffender("four of them under the heat sinks", machine(platform().cooling(deep).make()).channels(4, R16).require(sixteen))
                .says("", "The number of spare slots is 12; the request asks for 16.")
                .andOffender("slots beside an empty socket do not count", machine().processors(processor("P10").make()).channels(4, R16)
                        .require(require().spareSlots(9).make()))
                .says("", "The number of spare slots is 8; the request asks for 9.")
                .innocent("16 where 16 are asked for", asked(require().spareSlots(16)));
    }

    /** 85 + 2 x 85 + 8 x 4 = 287. */
    @ForRule(PowerLimit.ID)
    Examples powerLimit() {
        return offender("287 W where 286.9 are allowed", machine().channels(4, R16).limit(limit().powerW(286.9).make()))
                .says("", "The load is 287 W; the request allows 286.9 W.")
                .innocent("287 W where 287 are allowed", machine().channels(4, R16).limit(limit().powerW(287).make()))
                .innocent("no limit", machine().channels(4, R16));
    }

    @ForRule(ProcessorCount.ID)
    Examples processorCount() {
        return offender("2 where exactly 1 is asked for", asked(require().processors(1)))
                .says("", "The machine has 2 processors; the request asks for 1.")
                .andOffender("1 where 2 are asked for", machine().processors(processor("P10").make()).channels(4, R16)
                        .require(require().processors(2).make()))
                .says("", "The machine has 1 processor; the request asks for 2.")
                .innocent("2 where 2 are asked for", asked(require().processors(2)))
                .innocent("any count", asked(require().processors(0)));
    }

    private static MachineSketch asked(RequirementsSketch least) {
        return machine().channels(4, R16).require(least.make());
    }

    private static MachineSketch unbalanced(double leastGbs) {
        return machine().stacks(List.of(List.of(R32), List.of(R16), List.of(R16), List.of(R16)))
                .require(require().bandwidthGbs(leastGbs).make());
    }
}
