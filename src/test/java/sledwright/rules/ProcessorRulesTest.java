package sledwright.rules;

import static sledwright.rules.Examples.offender;
import static sledwright.samples.Samples.P10;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.TALL;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.platform;
import static sledwright.samples.Samples.processor;

import sledwright.domain.Processor;
import sledwright.rules.processor.MatchedProcessors;
import sledwright.rules.processor.SocketCount;
import sledwright.rules.processor.SocketMatch;
import sledwright.rules.processor.TdpLimit;
import sledwright.samples.MachineSketch;

class ProcessorRulesTest extends RuleGroup {

    @ForRule(SocketMatch.ID)
    Examples socketMatch() {
        return offender("another socket", pairOf(processor("P10-X").socket("LK4").make()))
                .says("P10-X", "P10-X is of generation G1 in socket LK4; BOX takes G1 in socket LK3.")
                .andOffender("another generation", pairOf(processor("P10-G3").generation("G3").make()))
                .says("P10-G3", "P10-G3 is of generation G3 in socket LK3; BOX takes G1 in socket LK3.")
                .andOffender("none of two generations", machine(platform().generations("G2", "G1").make())
                        .processors(2, processor("P10-G3").generation("G3").make()).channels(4, R16))
                .says("P10-G3", "P10-G3 is of generation G3 in socket LK3; BOX takes G1, G2 in socket LK3.")
                .innocent("socket and generation listed", pairOf(P10));
    }

    @ForRule(SocketCount.ID)
    Examples socketCount() {
        return offender("2 processors on a platform that runs with 1", machine(platform().counts(1).make())
                        .processors(P10, P10).channel(0, 0, R16))
                .says("BOX", "The machine has 2 processors; BOX runs with 1.")
                .andOffender("2 processors that work alone", pairOf(processor("SOLO").socketsMax(1).make()))
                .says("SOLO", "The machine has 2 processors; SOLO works with no other.")
                .andOffender("3 processors where 1, 2 or 4 run", machine(platform().counts(1, 2, 4).make())
                        .processors(3, processor("P10-4").socketsMax(4).make()).channels(4, R16))
                .says("BOX", "The machine has 3 processors; BOX runs with 1 or 2 or 4.")
                .innocent("2 where 1 and 2 run, of a part that works in pairs", pairOf(P10))
                .innocent("1 of a part that works alone", machine().processors(processor("SOLO").socketsMax(1).make()).channels(4, R16));
    }

    @ForRule(MatchedProcessors.ID)
    Examples matchedProcessors() {
        return offender("two part numbers", machine().processors(P10, processor("P12").cores(12).make()).channels(4, R16))
                .says("", "The fitted processors differ: P10, P12.")
                .innocent("twice the same part", pairOf(P10))
                .innocent("a single one", machine().processors(P10).channels(4, R16));
    }

    @ForRule(TdpLimit.ID)
    Examples tdpLimit() {
        return offender("135.5 W on a board of 135 W", board135W(135.5))
                .says("HOT", "HOT has a TDP of 135.5 W; BOX takes up to 135 W.")
                .innocent("135 W on a board of 135 W", board135W(135));
    }

    private static MachineSketch board135W(double tdpW) {
        return machine(platform().maxTdpW(135).make()).processors(2, processor("HOT").tdpW(tdpW).make()).cooling(TALL).channels(4, R16);
    }

    private static MachineSketch pairOf(Processor processor) {
        return machine().processors(2, processor).channels(4, R16);
    }
}
