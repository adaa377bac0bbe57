package sledwright.rules;

import static sledwright.rules.Examples.offender;
import static sledwright.samples.Samples.LOW;
import static sledwright.samples.Samples.P10;
import static sledwright.samples.Samples.Q32;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.R32;
import static sledwright.samples.Samples.R8;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.module;
import static sledwright.samples.Samples.platform;
import static sledwright.samples.Samples.require;

import java.util.List;
import sledwright.domain.CoolingKit;
import sledwright.domain.MemoryModule;
import sledwright.rules.memory.BalancedChannels;
import sledwright.rules.memory.ChannelOrder;
import sledwright.rules.memory.MatchedSockets;
import sledwright.rules.memory.MemoryPresent;
import sledwright.rules.memory.ModuleCount;
import sledwright.rules.memory.RankOrder;
import sledwright.rules.memory.SlotNeedsProcessor;
import sledwright.rules.memory.SlotOrder;
import sledwright.samples.MachineSketch;

/** The rules about which slots are filled. */
class MemorySlotRulesTest extends RuleGroup {

    @ForRule(MemoryPresent.ID)
    Examples memoryPresent() {
        return offender("no module beside the second processor", machine().channel(0, 0, R16))
                .says("socket 2", "Socket 2 has a processor and no module.").alsoBreaks("matched-sockets")
                .andOffender("no module at all", machine())
                .says("socket 1", "Socket 1 has a processor and no module.")
                .says("socket 2", "Socket 2 has a processor and no module.")
                .innocent("one module beside each processor", machine().channels(1, R16))
                .innocent("an empty second socket needs none", machine().processors(P10).channels(1, R16));
    }

    @ForRule(SlotNeedsProcessor.ID)
    Examples slotNeedsProcessor() {
        return offender("a module beside the empty second socket", machine().processors(P10).channels(1, R16).slot("2A1", R16))
                .says("2A1", "Slot 2A1 holds R16, but socket 2 has no processor.")
                .innocent("the same module with a processor in the second socket", machine().processors(P10, P10).channels(1, R16));
    }

    @ForRule(SlotOrder.ID)
    Examples slotOrder() {
        return offender("the second slot filled before the first", machine().processors(P10).slot("1A2", R16))
                .says("1A2", "Slot 1A2 is filled while slot 1A1 of the same channel is empty.")
                .andOffender("the third filled before the second", machine().processors(P10).slot("1A1", R16).slot("1A3", R16))
                .says("1A3", "Slot 1A3 is filled while slot 1A2 of the same channel is empty.")
                .innocent("first, second and third", machine().processors(P10).channels(4, R16, R16, R16))
                .innocent("first alone", machine().processors(P10).slot("1A1", R16));
    }

    @ForRule(RankOrder.ID)
    Examples rankOrder() {
        return offender("two ranks behind one", machine().processors(P10).channels(4, R8, R16))
                .says("1A2", "Slot 1A2 holds a module of 16 GB with 2 ranks behind one of 8 GB with 1.")
                .says("1B2", "Slot 1B2 holds a module of 16 GB with 2 ranks behind one of 8 GB with 1.")
                .says("1C2", "Slot 1C2 holds a module of 16 GB with 2 ranks behind one of 8 GB with 1.")
                .says("1D2", "Slot 1D2 holds a module of 16 GB with 2 ranks behind one of 8 GB with 1.")
                .andOffender("32 GB behind 16 GB of as many ranks", machine().processors(P10).channels(1, R16, R32))
                .says("1A2", "Slot 1A2 holds a module of 32 GB with 2 ranks behind one of 16 GB with 2.")
                .innocent("two ranks before one", machine().processors(P10).channels(4, R16, R8))
                .innocent("32 GB before 16 GB of as many ranks", machine().processors(P10).channels(1, R32, R16))
                .innocent("equal modules", machine().processors(P10).channels(1, R16, R16))
                .innocent("four ranks of 32 GB before two ranks of 64 GB: ranks come first",
                        machine().processors(P10).channels(1, Q32, module("R64", 64).make()));
    }

    @ForRule(ChannelOrder.ID)
    Examples channelOrder() {
        CoolingKit overSecond = new CoolingKit("WIDE", "wide heat sink", 150, List.of("1A2"));
        CoolingKit overFirst = new CoolingKit("BROAD", "broad heat sink", 150, List.of("1A1"));
        return offender("the second channel filled and the first empty", machine().processors(P10).channel(0, 1, R16))
                .says("1B", "Channel 1B holds 1 module while channel 1A before it holds 0 and has room.")
                .andOffender("two modules behind one", machine().processors(P10).channel(0, 0, R16).channel(0, 1, R16).channel(0, 2, R16, R16))
                .says("1C", "Channel 1C holds 2 modules while channel 1A before it holds 1 and has room.")
                .innocent("two, then one", machine().processors(P10).channel(0, 0, R16, R16).channel(0, 1, R16))
                .innocent("as many on each", machine().processors(P10).channels(4, R16, R16))
                .innocent("two behind one whose second slot the kit covers: it has no room",
                        covered(overSecond).channel(0, 0, R16).channel(0, 1, R16, R16))
                .innocent("one behind none whose first slot the kit covers", covered(overFirst).channel(0, 1, R16))
                .andOffender("two behind none beside a covered channel", covered(overFirst).channel(0, 2, R16, R16))
                .says("1C", "Channel 1C holds 2 modules while channel 1B before it holds 0 and has room.");
    }

    @ForRule(MatchedSockets.ID)
    Examples matchedSockets() {
        MemoryModule slower = module("R16-2133", 16).mts(2133).make();
        MemoryModule x8 = module("R16-X8", 16).width(8).make();
        MemoryModule fourRanks = module("Q16", 16).ranks(4).make();
        return offender("the second socket one module short", machine().channel(0, 0, R16).channel(0, 1, R16).channel(1, 0, R16))
                .says("2B1", "Slot 2B1 holds nothing while slot 1B1 of the first socket holds 16 GB 2Rx4 RDIMM.")
                .andOffender("as many GB of twice the size", machine().channel(0, 0, R32).channel(1, 0, R16))
                .says("2A1", "Slot 2A1 holds 16 GB 2Rx4 RDIMM while slot 1A1 of the first socket holds 32 GB 2Rx4 RDIMM.")
                .andOffender("another device width", machine().channel(0, 0, R16).channel(1, 0, x8))
                .says("2A1", "Slot 2A1 holds 16 GB 2Rx8 RDIMM while slot 1A1 of the first socket holds 16 GB 2Rx4 RDIMM.")
                .andOffender("another number of ranks", machine().channel(0, 0, R16).channel(1, 0, fourRanks))
                .says("2A1", "Slot 2A1 holds 16 GB 4Rx4 RDIMM while slot 1A1 of the first socket holds 16 GB 2Rx4 RDIMM.")
                .innocent("another part number and rated speed, otherwise alike", machine().channel(0, 0, R16).channel(1, 0, slower))
                .innocent("an empty socket matches anything", machine().processors(P10).channel(0, 0, R16));
    }

    @ForRule(ModuleCount.ID)
    Examples moduleCount() {
        return offender("3 modules on a socket that takes 1, 2, 4 or 8", counted(3))
                .says("socket 1", "Socket 1 holds 3 modules; BOX supports 1, 2, 4, 8.")
                .says("socket 2", "Socket 2 holds 3 modules; BOX supports 1, 2, 4, 8.")
                .innocent("4 modules", counted(4))
                .innocent("3 modules where the platform lists no counts", machine().channels(3, R16));
    }

    @ForRule(BalancedChannels.ID)
    Examples balancedChannels() {
        CoolingKit overLast = new CoolingKit("FULL", "full heat sink", 150, List.of("1D1", "1D2", "1D3"));
        return offender("an empty fourth channel", asked(1).channels(3, R16))
                .says("1D", "Channel 1D holds 0 GB and channel 1A 16 GB; all channels are to hold the same.")
                .andOffender("one channel of 32 GB", asked(1).channels(4, R16).channel(0, 0, R16, R16))
                .says("1B", "Channel 1B holds 16 GB and channel 1A 32 GB; all channels are to hold the same.")
                .andOffender("two sockets, each balanced by itself", asked(2).channels(4, R16).channel(1, 0, R32).channel(1, 1, R32)
                        .channel(1, 2, R32).channel(1, 3, R32)).alsoBreaks("matched-sockets")
                .says("1A", "Channel 1A holds 16 GB and channel 2A 32 GB; all channels are to hold the same.")
                .andOffender("a channel that the kit covers whole", asked(1).cooling(overLast).channels(3, R16))
                .says("1D", "Channel 1D holds 0 GB and channel 1A 16 GB; all channels are to hold the same.")
                .innocent("as much on each", asked(2).channels(4, R16))
                .innocent("one of 32 GB beside two of 16: capacity counts", asked(1).channels(2, R16, R16).channel(0, 2, R32).channel(0, 3, R32))
                .innocent("an empty channel where nothing is asked", machine().processors(P10).channels(3, R16))
                .innocent("an empty second socket", asked(1).channels(4, R16));
    }

    private static MachineSketch asked(int processors) {
        return machine().processors(processors, P10).require(require().balanced().make());
    }

    private static MachineSketch counted(int channels) {
        return machine(platform().countsPerSocket(8, 4, 2, 1).make()).channels(channels, R16);
    }

    private static MachineSketch covered(CoolingKit kit) {
        return machine(platform().channels(4, 2).cooling(LOW, kit).make()).processors(P10).cooling(kit);
    }
}
