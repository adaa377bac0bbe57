package sledwright.rules;

import static sledwright.rules.Examples.offender;
import static sledwright.samples.Samples.L64;
import static sledwright.samples.Samples.LOW;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.TALL;
import static sledwright.samples.Samples.limit;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.platform;
import static sledwright.samples.Samples.processor;

import java.util.List;
import java.util.Set;
import sledwright.domain.CoolingKit;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.Thermal;
import sledwright.domain.Thermal.InletRow;
import sledwright.rules.cooling.BlockedSlot;
import sledwright.rules.cooling.HeatSinkRating;
import sledwright.rules.cooling.InletLimit;
import sledwright.samples.MachineSketch;

class CoolingRulesTest extends RuleGroup {

    private static final CoolingKit LONG = new CoolingKit("LONG", "long heat sink", 150, List.of("1D3", "2D3"));

    @ForRule(HeatSinkRating.ID)
    Examples heatSinkRating() {
        return offender("106 W under a kit of 105 W", machine().processors(2, processor("P106").tdpW(106).make()).cooling(LOW).channels(4, R16))
                .says("P106", "LOW is rated for 105 W; P106 has a TDP of 106 W.")
                .innocent("105 W under a kit of 105 W", machine().processors(2, processor("P105").tdpW(105).make()).cooling(LOW).channels(4, R16))
                .innocent("106 W under the taller kit", machine().processors(2, processor("P106").tdpW(106).make()).cooling(TALL).channels(4, R16));
    }

    @ForRule(BlockedSlot.ID)
    Examples blockedSlot() {
        return offender("the covered third slot of the last channel filled", underLongKit().channels(4, R16, R16, R16))
                .says("1D3", "LONG covers slot 1D3, which holds R16.")
                .says("2D3", "LONG covers slot 2D3, which holds R16.")
                .innocent("everything filled but the covered slots", underLongKit().channels(3, R16, R16, R16)
                        .channel(0, 3, R16, R16).channel(1, 3, R16, R16))
                .innocent("the same slots under a kit that covers none", machine().channels(4, R16, R16, R16));
    }

    @ForRule(InletLimit.ID)
    Examples inletLimit() {
        Thermal beside = new Thermal(950, 300, List.of(new InletRow(150, 30, Set.of()), new InletRow(150, 24, Set.of(ModuleType.LRDIMM))));
        Thermal loadReducedFirst = new Thermal(950, 300, List.of(new InletRow(105, 24, Set.of(ModuleType.LRDIMM)), new InletRow(150, 30, Set.of())));
        Thermal toA120 = new Thermal(950, 300, List.of(new InletRow(105, 35, Set.of()), new InletRow(120, 32, Set.of())));
        Thermal loadReducedTo105 = new Thermal(950, 300, List.of(new InletRow(105, 24, Set.of(ModuleType.LRDIMM)),
                new InletRow(150, 30, Set.of(ModuleType.RDIMM))));
        Thermal loadReducedAlone = new Thermal(950, 300, List.of(new InletRow(105, 24, Set.of(ModuleType.LRDIMM))));
        return offender("35.1 C at sea level for 85 W, 35 C allowed", at(35.1, 0, 85))
                .says("P85", "The inlet air of 35.1 C counts as 35.1 C at 0 m; with a processor of 85 W and RDIMM the platform allows 35 C.")
                .andOffender("34 C at 1280 m, 330 m above the 950 m where the air gets thin", at(34, 1280, 85))
                .says("P85", "The inlet air of 34 C counts as 35.1 C at 1280 m; with a processor of 85 W and RDIMM the platform allows 35 C.")
                .andOffender("31 C for 106 W, which the row of 150 W serves", at(31, 0, 106))
                .says("P106", "The inlet air of 31 C counts as 31 C at 0 m; with a processor of 106 W and RDIMM the platform allows 30 C.")
                .andOffender("121 W above the last row of 120 W", site(toA120, 121, 20, R16))
                .says("P121", "BOX cools processors of up to 120 W; P121 has a TDP of 121 W.")
                .andOffender("the same where the request names no inlet", site(toA120, 121, R16))
                .says("P121", "BOX cools processors of up to 120 W; P121 has a TDP of 121 W.")
                .andOffender("the same before any module is chosen", machine(platform().thermal(toA120).make())
                        .processors(2, processor("P121").tdpW(121).make()).cooling(TALL))
                .alsoBreaks("memory-present").says("P121", "BOX cools processors of up to 120 W; P121 has a TDP of 121 W.")
                .andOffender("121 W with LRDIMMs, whose last row is of 105 W", site(loadReducedTo105, 121, L64))
                .says("P121", "BOX cools processors of up to 105 W beside LRDIMM; P121 has a TDP of 121 W.")
                .andOffender("modules of a type that no row serves", site(loadReducedAlone, 85, R16))
                .says("P85", "BOX cools no processor beside RDIMM at any inlet temperature.")
                .andOffender("25 C with LRDIMMs, which have 24 C in their own row", site(loadReducedFirst, 85, 25, L64))
                .says("P85", "The inlet air of 25 C counts as 25 C at 0 m; with a processor of 85 W and LRDIMM the platform allows 24 C.")
                .andOffender("25 C with LRDIMMs, whose own row of the same TDP has 24 C", site(beside, 85, 25, L64))
                .says("P85", "The inlet air of 25 C counts as 25 C at 0 m; with a processor of 85 W and LRDIMM the platform allows 24 C.")
                .innocent("25 C with RDIMMs, beside the LRDIMMs' row of the same TDP", site(beside, 85, 25, R16))
                .innocent("34 C at 1250 m counts as 35 C, which is allowed", at(34, 1250, 85))
                .innocent("35 C at 950 m, where the air is not thin yet", at(35, 950, 85))
                .innocent("30 C for 106 W", at(30, 0, 106))
                .innocent("120 W in the last row of 120 W", site(toA120, 120, 32, R16))
                .innocent("121 W with RDIMMs, where the last row of LRDIMMs is of 105 W", site(loadReducedTo105, 121, R16))
                .innocent("25 C with RDIMMs beside the LRDIMMs' row of 24 C", site(loadReducedFirst, 85, 25, R16))
                .innocent("no table, no rule", site(new Thermal(950, 300, List.of()), 85, 60, R16))
                .innocent("no inlet temperature asked", machine().channels(4, R16));
    }

    private static MachineSketch underLongKit() {
        return machine(platform().cooling(LOW, LONG).make()).cooling(LONG);
    }

    private static MachineSketch at(double inletC, double altitudeM, double tdpW) {
        return machine().processors(2, processor("P%.0f".formatted(tdpW)).tdpW(tdpW).make()).cooling(TALL).channels(4, R16)
                .limit(limit().site(inletC, altitudeM).make());
    }

    private static MachineSketch site(Thermal table, double tdpW, double inletC, MemoryModule module) {
        return site(table, tdpW, module).limit(limit().site(inletC, 0).make());
    }

    private static MachineSketch site(Thermal table, double tdpW, MemoryModule module) {
        return machine(platform().thermal(table).make()).processors(2, processor("P%.0f".formatted(tdpW)).tdpW(tdpW).make())
                .cooling(TALL).channels(4, module);
    }
}
