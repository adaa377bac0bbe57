package sledwright.rules;

import static sledwright.rules.Examples.offender;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.limit;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.platform;
import static sledwright.samples.Samples.processor;
import static sledwright.samples.Samples.supply;

import java.util.Map;
import sledwright.domain.Platform;
import sledwright.domain.Supply;
import sledwright.rules.power.PowerBudget;
import sledwright.rules.power.PowerSupply;
import sledwright.samples.MachineSketch;

/** Every machine here has 2 x 85 W of processors and 8 x 4 W of modules beside its platform's own watts. */
class PowerRulesTest extends RuleGroup {

    private static final Supply TWO_OF_300 = supply("PS-300", 2, 1, 300, 250, Map.of());

    @ForRule(PowerSupply.ID)
    Examples powerSupply() {
        Supply twoOfFour = supply("PS-150", 4, 2, 150, 0, Map.of());
        Supply lone = supply("PS-LONE", 1, 0, 300, 0, Map.of());
        return offender("301 W when one of two supplies of 300 W has failed", fed(99, TWO_OF_300))
                .says("PS-300", "The load is 301 W; 2 x PS-300 deliver 300 W with 1 failed.")
                .andOffender("251 W at 115 V, where one supply gives 250 W", fed(49, TWO_OF_300).limit(limit().mainsV(115).make()))
                .says("PS-300", "The load is 251 W; 2 x PS-300 deliver 250 W with 1 failed.")
                .andOffender("251 W at 179 V, which is still low line", fed(49, TWO_OF_300).limit(limit().mainsV(179).make()))
                .says("PS-300", "The load is 251 W; 2 x PS-300 deliver 250 W with 1 failed.")
                .andOffender("a supply that does not run at 120 V", fed(40, lone).limit(limit().mainsV(120).make()))
                .says("PS-LONE", "PS-LONE cannot be used at 120 V.")
                .andOffender("301 W when two of four supplies of 150 W have failed", fed(99, twoOfFour))
                .says("PS-150", "The load is 301 W; 4 x PS-150 deliver 300 W with 2 failed.")
                .andOffender("none chosen where the platform offers one", machine().noSupply().channels(4, R16))
                .says("BOX", "BOX needs a power supply and none is chosen.")
                .innocent("300 W when one of two supplies of 300 W has failed", fed(98, TWO_OF_300))
                .innocent("251 W at 180 V, which is high line", fed(49, TWO_OF_300).limit(limit().mainsV(180).make()))
                .innocent("250 W at 115 V", fed(48, TWO_OF_300).limit(limit().mainsV(115).make()))
                .innocent("300 W when two of four have failed", fed(98, twoOfFour))
                .innocent("a single supply without redundancy at 300 W", fed(98, lone))
                .innocent("none where the enclosure feeds the machine", machine(platform().supplies().make()).noSupply().channels(4, R16));
    }

    @ForRule(PowerBudget.ID)
    Examples powerBudget() {
        return offender("287.5 W in a sled that is granted 287", granted(287, 85.5))
                .says("BOX", "The load is 287.5 W; the enclosure grants BOX 287 W.")
                .innocent("287 W in a sled that is granted 287", granted(287, 85))
                .innocent("no budget", machine(platform().supplies().make()).noSupply().processors(2, processor("HOT").tdpW(105).make())
                        .channels(4, R16, R16, R16));
    }

    private static MachineSketch fed(double baseW, Supply supply) {
        return machine(platform().baseW(baseW).supplies(supply).make()).channels(4, R16);
    }

    private static MachineSketch granted(double budgetW, double baseW) {
        Platform sled = platform().baseW(baseW).budgetW(budgetW).supplies().make();
        return machine(sled).noSupply().channels(4, R16);
    }
}
