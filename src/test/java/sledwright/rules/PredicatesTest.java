package sledwright.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import org.junit.jupiter.api.Test;
import sledwright.domain.Request;
import sledwright.rules.choice.RequiredPart;

/** What the search asks of the rulebook, and no judgement of a whole machine does. */
class PredicatesTest {

    @Test
    void requiredPartAmongChoices() {
        Request wants = Request.named("sample").withUse(Set.of("TALL", "R16"));
        assertThat(RequiredPart.allows(wants, Set.of("LOW", "TALL"), "TALL")).isTrue();
        assertThat(RequiredPart.allows(wants, Set.of("LOW", "TALL"), "LOW")).isFalse();
        assertThat(RequiredPart.allows(wants, Set.of("P10", "P12"), "P12")).isTrue();
    }

    @Test
    void everyRuleIsOfAMachineOfAnEnclosureOrOfAnOrder() {
        assertThat(Rulebook.ofEnclosure()).extracting(Rule::id).containsExactly("enclosure-bays", "enclosure-power");
        assertThat(Rulebook.ofOrder()).extracting(Rule::id).containsExactly("one-module-part", "in-stock", "lead-time", "condition", "budget");
        assertThat(Rulebook.all()).hasSize(Rulebook.ofMachine().size() + Rulebook.ofEnclosure().size() + Rulebook.ofOrder().size())
                .containsAll(Rulebook.ofMachine()).containsAll(Rulebook.ofEnclosure()).containsAll(Rulebook.ofOrder());
    }
}
