package sledwright.rules;

import static sledwright.rules.Examples.offender;
import static sledwright.samples.PlatformSketch.row;
import static sledwright.samples.Samples.L64;
import static sledwright.samples.Samples.P10;
import static sledwright.samples.Samples.Q32;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.R32;
import static sledwright.samples.Samples.R8;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.module;
import static sledwright.samples.Samples.platform;
import static sledwright.samples.Samples.processor;
import static sledwright.samples.Samples.require;

import java.util.OptionalDouble;
import java.util.Set;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.rules.memory.DeviceWidth;
import sledwright.rules.memory.DistinctCapacities;
import sledwright.rules.memory.MemoryGeneration;
import sledwright.rules.memory.ModeSupported;
import sledwright.rules.memory.ModuleTypeTaken;
import sledwright.rules.memory.ModulesPerChannel;
import sledwright.rules.memory.OneModuleType;
import sledwright.rules.memory.ProcessorMemoryLimit;
import sledwright.rules.memory.RankLimit;
import sledwright.samples.MachineSketch;

/** The rules about which modules stand together, and what a channel, a socket and a mode bear. */
class MemoryModuleRulesTest extends RuleGroup {

    @ForRule(MemoryGeneration.ID)
    Examples memoryGeneration() {
        return offender("DDR3 on a platform for DDR4", one().channels(4, module("OLD16", 16).generation("DDR3").make()))
                .says("OLD16", "OLD16 is DDR3; BOX takes DDR4.")
                .innocent("DDR4", one().channels(4, R16));
    }

    @ForRule(ModuleTypeTaken.ID)
    Examples moduleType() {
        return offender("a UDIMM where RDIMMs and LRDIMMs are taken", one().channels(4, module("U16", 16).type(ModuleType.UDIMM).make()))
                .says("U16", "U16 is a UDIMM; BOX takes RDIMM, LRDIMM.").alsoBreaks("modules-per-channel")
                .innocent("an RDIMM", one().channels(4, R16))
                .innocent("an LRDIMM", one().channels(4, L64));
    }

    @ForRule(OneModuleType.ID)
    Examples oneModuleType() {
        return offender("an RDIMM behind an LRDIMM", one().channels(1, L64, R16))
                .says("", "Modules of several types stand in one machine: RDIMM, LRDIMM.")
                .andOffender("an RDIMM beside an LRDIMM", one().channel(0, 0, L64).channel(0, 1, R16))
                .says("", "Modules of several types stand in one machine: RDIMM, LRDIMM.")
                .innocent("RDIMMs of two sizes", one().channels(1, R32, R16));
    }

    @ForRule(DeviceWidth.ID)
    Examples deviceWidth() {
        Platform strict = platform().forbidMixedWidths().make();
        return offender("x8 behind x4 where mixing is forbidden", machine(strict).processors(P10).channels(1, R16, R8))
                .says("", "BOX does not mix device widths; the machine holds x4 and x8.")
                .innocent("x4 alone on the same platform", machine(strict).processors(P10).channels(1, R32, R16))
                .innocent("x8 behind x4 where mixing is allowed", one().channels(1, R16, R8));
    }

    @ForRule(DistinctCapacities.ID)
    Examples distinctCapacities() {
        return offender("8, 16 and 32 GB where two capacities may stand", one().channels(1, R32, R16, R8))
                .says("", "The machine holds modules of 8, 16, 32 GB; BOX allows 2 distinct capacities.")
                .innocent("two capacities", one().channels(1, R32, R16, R16))
                .innocent("three where three may stand", machine(platform().distinctCapacities(3).make()).processors(P10)
                        .channels(1, R32, R16, R8))
                .andOffender("two where one may stand", machine(platform().distinctCapacities(1).make()).processors(P10).channels(1, R32, R16))
                .says("", "The machine holds modules of 16, 32 GB; BOX allows 1 distinct capacity.");
    }

    @ForRule(RankLimit.ID)
    Examples rankLimit() {
        Platform six = platform().rankLimit(ModuleType.RDIMM, 6).rankLimit(ModuleType.LRDIMM, 6).make();
        MemoryModule full = module("R64Q", 64).type(ModuleType.LRDIMM).ranks(4, 4).make();
        return offender("4 + 4 ranks where 6 may be", machine(six).processors(P10).channels(1, Q32, Q32))
                .says("1A", "Channel 1A carries 8 logical ranks; the limit for RDIMM is 6.")
                .andOffender("LRDIMMs that show all their ranks", machine(six).processors(P10).channels(1, full, full))
                .says("1A", "Channel 1A carries 8 logical ranks; the limit for LRDIMM is 6.")
                .andOffender("4 + 2 + 2 + 2 in the fourth slot", machine(platform().channels(4, 4)
                        .speeds(row(ModuleType.RDIMM, Set.of(), 2400, 2400, 1866, 1600)).make()).processors(P10)
                        .channels(1, Q32, R32, R32, R32))
                .says("1A", "Channel 1A carries 10 logical ranks; the limit for RDIMM is 8.")
                .innocent("4 + 2 ranks where 6 may be", machine(six).processors(P10).channels(1, Q32, R32))
                .innocent("LRDIMMs of four ranks that show two, three of them: 6", machine(six).processors(P10).channels(1, L64, L64, L64))
                .innocent("2 + 2 + 2 in three slots where 8 may be", one().channels(1, R16, R16, R16));
    }

    @ForRule(ModulesPerChannel.ID)
    Examples modulesPerChannel() {
        return offender("three of four ranks where the table ends at two", machine(platform().rankLimit(ModuleType.RDIMM, 12).make())
                        .processors(P10).channels(1, Q32, Q32, Q32))
                .says("1A", "Channel 1A holds 3 modules; BOX has no speed for 4-rank RDIMM at that number.")
                .andOffender("eight ranks, for which the table has no row", machine(platform().rankLimit(ModuleType.RDIMM, 16).make())
                        .processors(P10).channels(1, module("O64", 64).ranks(8).make()))
                .says("1A", "Channel 1A holds 1 module; BOX has no speed for 8-rank RDIMM at that number.")
                .andOffender("one of four ranks and two of two: each needs an entry at three", one().channels(1, Q32, R16, R16))
                .says("1A", "Channel 1A holds 3 modules; BOX has no speed for 4-rank RDIMM at that number.")
                .innocent("two of four ranks", one().channels(1, Q32, Q32))
                .innocent("three of two ranks", one().channels(1, R16, R16, R16))
                .innocent("three of a type whose row serves every rank", one().channels(1, L64, L64, L64));
    }

    @ForRule(ProcessorMemoryLimit.ID)
    Examples processorMemoryLimit() {
        Processor to128 = processor("P128").maxMemoryGb(128).make();
        return offender("144 GB on each socket of a processor that addresses 128", machine().processors(2, to128).channels(3, R32, R16))
                .says("socket 1", "Socket 1 holds 144 GB; P128 addresses 128 GB.")
                .says("socket 2", "Socket 2 holds 144 GB; P128 addresses 128 GB.")
                .innocent("128 GB", machine().processors(2, to128).channels(4, R32))
                .innocent("144 GB on a processor without a limit", machine().processors(2, P10).channels(3, R32, R16));
    }

    @ForRule(ModeSupported.ID)
    Examples memoryMode() {
        Platform three = platform().channels(3, 3).make();
        Platform plain = platform().mirrored(OptionalDouble.empty()).rankSparing(false).make();
        return offender("mirrored on a platform that does not mirror", asking(MemoryMode.MIRRORED, plain).channels(4, R16))
                .says("BOX", "BOX does not support memory mode mirrored.")
                .andOffender("rank sparing on a platform that does not spare", asking(MemoryMode.RANK_SPARING, plain).channels(4, R16))
                .says("BOX", "BOX does not support memory mode rank-sparing.")
                .andOffender("mirrored over three channels", asking(MemoryMode.MIRRORED, three).channels(2, R16))
                .says("BOX", "BOX does not support memory mode mirrored.")
                .andOffender("mirrored pairs of one and none", asking(MemoryMode.MIRRORED, platform().make()).channels(3, R16))
                .says("1C1", "Slots 1C1 and 1D1 mirror each other and do not hold alike modules.")
                .andOffender("mirrored pairs of two sizes", asking(MemoryMode.MIRRORED, platform().make()).channel(0, 0, R32).channel(0, 1, R16))
                .says("1A1", "Slots 1A1 and 1B1 mirror each other and do not hold alike modules.")
                .andOffender("rank sparing with one rank on a channel", asking(MemoryMode.RANK_SPARING, platform().make()).channels(1, R8))
                .says("1A", "Channel 1A carries a single rank; rank sparing needs two.")
                .innocent("mirrored pairs alike, one pair empty", asking(MemoryMode.MIRRORED, platform().make()).channels(2, R16))
                .innocent("each pair another size", asking(MemoryMode.MIRRORED, platform().make())
                        .channel(0, 0, R32).channel(0, 1, R32).channel(0, 2, R16).channel(0, 3, R16))
                .innocent("rank sparing with two modules of one rank", asking(MemoryMode.RANK_SPARING, platform().make()).channels(1, R8, R8))
                .innocent("rank sparing with one module of two ranks", asking(MemoryMode.RANK_SPARING, platform().make()).channels(1, R16))
                .innocent("independent on the plain platform", asking(MemoryMode.INDEPENDENT, plain).channels(3, R16));
    }

    private static MachineSketch asking(MemoryMode mode, Platform platform) {
        return machine(platform).processors(P10).require(require().mode(mode).make());
    }

    private static MachineSketch one() {
        return machine().processors(P10);
    }
}
