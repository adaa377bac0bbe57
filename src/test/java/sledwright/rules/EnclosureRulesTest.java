package sledwright.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static sledwright.rules.Examples.offender;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.limit;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.platform;
import static sledwright.samples.Samples.supply;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.domain.Enclosure;
import sledwright.domain.FilledEnclosure;
import sledwright.domain.Limits;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Supply;
import sledwright.rules.choice.ForbiddenPart;
import sledwright.rules.enclosure.EnclosureBays;
import sledwright.rules.enclosure.EnclosurePower;

/** A sled here loads 2 x 85 W of processors, 8 x 4 W of modules and 48 W of its own: 250 W. */
class EnclosureRulesTest extends RuleGroup {

    private static final Build SLED = sled("SLED-A", 48);
    private static final Build OTHER = sled("SLED-B", 48);
    private static final Build STRANGER = sled("SLED-C", 48);
    /** Two of three give 1200 W at high line and 1000 W at low line. */
    private static final Supply THREE = supply("PS-600", 3, 1, 600, 500, Map.of());
    private static final Supply PLENTY = supply("PS-9000", 2, 1, 9000, 0, Map.of());

    @ForRule(EnclosureBays.ID)
    Examples bays() {
        Enclosure four = enclosure(4, 100, 0, PLENTY);
        return offender("five sleds for four bays", housing(four, PLENTY, 5, SLED))
                .says("FRAME", "FRAME holds 5 sleds and has 4 bays.")
                .andOffender("two sleds for one bay", housing(enclosure(1, 100, 0, PLENTY), PLENTY, 2, SLED))
                .says("FRAME", "FRAME holds 2 sleds and has 1 bay.")
                .andOffender("sleds of a platform that it does not take", housing(four, PLENTY, SLED, STRANGER, STRANGER))
                .says("FRAME", "A sled of SLED-C stands in FRAME, which takes SLED-A, SLED-B.")
                .andOffender("too many, and not all of them taken", housing(four, PLENTY, SLED, SLED, SLED, STRANGER, OTHER))
                .says("FRAME", "FRAME holds 5 sleds and has 4 bays.")
                .says("FRAME", "A sled of SLED-C stands in FRAME, which takes SLED-A, SLED-B.")
                .innocent("four sleds for four bays", housing(four, PLENTY, 4, SLED))
                .innocent("sleds of two platforms that it takes", housing(four, PLENTY, SLED, OTHER))
                .innocent("no sled at all", housing(four, PLENTY));
    }

    @ForRule(EnclosurePower.ID)
    Examples power() {
        Request lowLine = Request.named("sample").withLimit(limit().mainsV(115).make());
        return offender("1201 W when one of three supplies of 600 W has failed", housing(enclosure(8, 201, 0, THREE), THREE, 4, SLED))
                .says("PS-600", "FRAME takes 201 W and its sleds 1000 W; 3 x PS-600 deliver 1200 W with 1 failed.")
                .andOffender("1001 W at 115 V, where two supplies give 1000 W",
                        new Housing(housing(enclosure(8, 251, 0, THREE), THREE, 3, SLED).filled(), lowLine))
                .says("PS-600", "FRAME takes 251 W and its sleds 750 W; 3 x PS-600 deliver 1000 W with 1 failed.")
                .andOffender("a supply that does not run at 115 V", new Housing(housing(enclosure(8, 0, 0, PLENTY), PLENTY).filled(), lowLine))
                .says("PS-9000", "PS-9000 cannot be used at 115 V in FRAME.")
                .andOffender("1050.5 W where the budget is 1050", housing(enclosure(8, 300.5, 1050, THREE), THREE, 3, SLED))
                .says("FRAME", "FRAME takes 300.5 W and its sleds 750 W; its budget is 1050 W.")
                .andOffender("above both", housing(enclosure(8, 250, 1100, THREE), THREE, 4, SLED))
                .says("PS-600", "FRAME takes 250 W and its sleds 1000 W; 3 x PS-600 deliver 1200 W with 1 failed.")
                .says("FRAME", "FRAME takes 250 W and its sleds 1000 W; its budget is 1100 W.")
                .innocent("1200 W when one of three has failed", housing(enclosure(8, 200, 0, THREE), THREE, 4, SLED))
                .innocent("1000 W at 115 V", new Housing(housing(enclosure(8, 250, 0, THREE), THREE, 3, SLED).filled(), lowLine))
                .innocent("1201 W at 230 V from three without redundancy", housing(enclosure(8, 201, 0, supply("PS-600", 3, 0, 600, 0, Map.of())),
                        supply("PS-600", 3, 0, 600, 0, Map.of()), 4, SLED))
                .innocent("1050 W where the budget is 1050", housing(enclosure(8, 300, 1050, THREE), THREE, 3, SLED));
    }

    /** 2 x 600 - 200 and 2 x 500 - 200; a budget of 900 leaves 700, one of 5000 nothing new. */
    @Test
    void capacityIsWhatIsLeftForTheSleds() {
        Limits lowLine = limit().mainsV(115).make();
        assertThat(EnclosurePower.capacityW(enclosure(8, 200, 0, THREE), THREE, Limits.NONE)).isEqualTo(1000);
        assertThat(EnclosurePower.capacityW(enclosure(8, 200, 0, THREE), THREE, lowLine)).isEqualTo(800);
        assertThat(EnclosurePower.capacityW(enclosure(8, 200, 900, THREE), THREE, lowLine)).isEqualTo(700);
        assertThat(EnclosurePower.capacityW(enclosure(8, 200, 5000, THREE), THREE, lowLine)).isEqualTo(800);
        assertThat(EnclosurePower.capacityW(enclosure(8, 1300, 0, THREE), THREE, Limits.NONE)).isEqualTo(-100);
        assertThat(EnclosurePower.capacityW(enclosure(8, 0, 0, PLENTY), PLENTY, lowLine)).isEqualTo(Double.NEGATIVE_INFINITY);
    }

    @Test
    void whatARequestForbidsIsNotInAnEnclosureEither() {
        FilledEnclosure filled = housing(enclosure(8, 200, 0, THREE), THREE, 1, SLED).filled();
        Request request = Request.named("sample");
        ForbiddenPart rule = new ForbiddenPart();
        assertThat(rule.judgeAround(new Housing(filled, request.withForbid(Set.of("FRAME", "PS-600", "PS-9000"))))).extracting(Violation::where, Violation::message).containsExactly(
                tuple("FRAME", "The machine stands in an enclosure with FRAME, which the request forbids."),
                tuple("PS-600", "The machine stands in an enclosure with PS-600, which the request forbids."));
        assertThat(rule.judgeAround(new Housing(filled, request.withForbid(Set.of("R16"))))).isEmpty();
        assertThat(Rulebook.judge(new Housing(filled, request.withForbid(Set.of("FRAME"))))).extracting(Violation::rule).containsExactly(ForbiddenPart.ID);
    }

    private static Build sled(String sku, double baseW) {
        Platform platform = platform().sku(sku).baseW(baseW).supplies().make();
        return machine(platform).noSupply().channels(4, R16).build();
    }

    private static Enclosure enclosure(int bays, double baseW, double budgetW, Supply supply) {
        return new Enclosure("FRAME", "sample enclosure", Set.of("SLED-A", "SLED-B"), bays, baseW, budgetW, List.of(supply));
    }

    private static Housing housing(Enclosure enclosure, Supply supply, int sleds, Build sled) {
        return new Housing(new FilledEnclosure(enclosure, supply, Collections.nCopies(sleds, sled)), Request.named("sample"));
    }

    private static Housing housing(Enclosure enclosure, Supply supply, Build... sleds) {
        return new Housing(new FilledEnclosure(enclosure, supply, Arrays.asList(sleds)), Request.named("sample"));
    }
}
