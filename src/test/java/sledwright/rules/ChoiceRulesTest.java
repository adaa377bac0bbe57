package sledwright.rules;

import static sledwright.rules.Examples.offender;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.R32;
import static sledwright.samples.Samples.machine;

import java.util.Set;
import sledwright.domain.Request;
import sledwright.rules.choice.AskedPlatform;
import sledwright.rules.choice.ForbiddenPart;
import sledwright.rules.choice.RequiredPart;
import sledwright.samples.MachineSketch;

/** Every machine here is a BOX with P10 processors under LOW kits, PAIR supplies and R16 modules. */
class ChoiceRulesTest extends RuleGroup {

    private static final Request ANY = Request.named("sample");

    @ForRule(AskedPlatform.ID)
    Examples askedPlatform() {
        return offender("BOX where two others are asked for", asked(ANY.withPlatforms(Set.of("SLED-2", "SLED-1"))))
                .says("BOX", "The platform is BOX; the request asks for SLED-1 or SLED-2.")
                .innocent("BOX where it is among those asked for", asked(ANY.withPlatforms(Set.of("SLED-1", "BOX"))))
                .innocent("any platform", asked(ANY));
    }

    @ForRule(ForbiddenPart.ID)
    Examples forbiddenPart() {
        return offender("module, kit and supply forbidden", asked(ANY.withForbid(Set.of("R16", "LOW", "PAIR", "R32"))))
                .says("LOW", "The machine holds LOW, which the request forbids.")
                .says("PAIR", "The machine holds PAIR, which the request forbids.")
                .says("R16", "The machine holds R16, which the request forbids.")
                .andOffender("platform and processor forbidden", asked(ANY.withForbid(Set.of("BOX", "P10"))))
                .says("BOX", "The machine holds BOX, which the request forbids.")
                .says("P10", "The machine holds P10, which the request forbids.")
                .innocent("a part forbidden that is not in the machine", asked(ANY.withForbid(Set.of("R32"))));
    }

    @ForRule(RequiredPart.ID)
    Examples requiredPart() {
        return offender("two parts wanted that are not in the machine", asked(ANY.withUse(Set.of("R32", "TALL", "R16"))))
                .says("R32", "The request wants R32 used, and the machine does without it.")
                .says("TALL", "The request wants TALL used, and the machine does without it.")
                .innocent("wanted parts of every kind in the machine", asked(ANY.withUse(Set.of("BOX", "P10", "LOW", "PAIR", "R16"))))
                .innocent("one module of the wanted part among others", machine().channels(4, R32, R16).request(ANY.withUse(Set.of("R16"))));
    }

    private static MachineSketch asked(Request request) {
        return machine().channels(4, R16).request(request);
    }
}
