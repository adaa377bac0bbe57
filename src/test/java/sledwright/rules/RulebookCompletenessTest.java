package sledwright.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sledwright.rules.Examples.Example;
import sledwright.rules.Examples.Finding;

/** Every identifier of the rules' text has a rule, examples of its own and finished sentences, and the other way round. */
class RulebookCompletenessTest {

    private static final Path TEXT = Path.of("docs", "rules.md");
    private static final Pattern ROW = Pattern.compile("^\\| `([a-z-]+)` \\|(.*)\\|$");
    private static final Pattern HEADER = Pattern.compile("^\\| id \\|.*");

    private static final List<RuleGroup> GROUPS = List.of(new ProcessorRulesTest(), new CoolingRulesTest(), new MemorySlotRulesTest(),
            new MemoryModuleRulesTest(), new PowerRulesTest(), new EnclosureRulesTest(), new StorageRulesTest(), new CardRulesTest(), new StockRulesTest(), new TargetRulesTest(), new ChoiceRulesTest());

    /** Rules about what stands where, not how much: their sentences name it. */
    private static final Set<String> WITHOUT_FIGURES = Set.of("socket-match", "matched-processors", "memory-present",
            "slot-needs-processor", "slot-order", "blocked-slot", "memory-generation", "module-type", "one-module-type", "device-width",
            "memory-mode", "condition", "asked-platform", "forbidden-part", "required-part");
    private static final Pattern NUMBER = Pattern.compile("(?<![A-Za-z\\d.-])\\d+(\\.\\d+)?(?![\\d]*[A-Za-z])");

    private static final SortedMap<String, Examples> EXAMPLES = new TreeMap<>();

    @BeforeAll
    static void gather() {
        GROUPS.forEach(group -> group.examples().forEach((rule, examples) ->
                assertThat(EXAMPLES.put(rule, examples)).as("examples of %s stand in two groups", rule).isNull()));
    }

    /** The identifiers of the text's tables, with the other cells of their rows. */
    static Map<String, List<String>> rows() throws IOException {
        Map<String, List<String>> rows = new TreeMap<>();
        for (String line : Files.readAllLines(TEXT)) {
            var row = ROW.matcher(line);
            if (row.matches()) {
                List<String> cells = Stream.of(row.group(2).split("\\|")).map(String::strip).toList();
                assertThat(rows.put(row.group(1), cells)).as("%s stands in the text twice", row.group(1)).isNull();
            } else {
                assertThat(line).as("a row of a table without an identifier").doesNotMatch("^\\| `.*");
            }
        }
        return rows;
    }

    static Stream<String> identifiers() throws IOException {
        return rows().keySet().stream();
    }

    @Test
    void theTextHasTheseGroups() throws IOException {
        List<String> groups = new ArrayList<>();
        String heading = "";
        for (String line : Files.readAllLines(TEXT)) {
            if (line.startsWith("## ")) {
                heading = line.substring(3);
            } else if (HEADER.matcher(line).matches()) {
                groups.add(heading);
            }
        }
        assertThat(groups).containsExactly("Processors", "Cooling", "Memory", "Memory as it is sold", "Power", "Enclosures", "Drives and bays", "Cards and extras", "Price and stock", "Targets", "Choice");
    }

    @Test
    void everyRuleStandsInTheTextAndOnlyOnceInTheRulebook() throws IOException {
        List<String> coded = Rulebook.all().stream().map(Rule::id).toList();
        assertThat(coded).doesNotHaveDuplicates().containsExactlyInAnyOrderElementsOf(rows().keySet());
    }

    @Test
    void noExamplesOfRulesThatDoNotExist() throws IOException {
        assertThat(rows().keySet()).containsAll(EXAMPLES.keySet());
    }

    @ParameterizedTest
    @MethodSource("identifiers")
    void hasLawFormulaAndSourceInTheText(String id) throws IOException {
        assertThat(rows().get(id)).as(id).hasSize(3).noneMatch(String::isEmpty);
    }

    @ParameterizedTest
    @MethodSource("identifiers")
    void hasARuleWhoseLawIsASentence(String id) {
        Map<String, Rule<?>> rules = Rulebook.all().stream().collect(Collectors.toMap(Rule::id, Function.identity()));
        assertThat(rules).containsKey(id);
        assertFinished(id, rules.get(id).law());
    }

    @ParameterizedTest
    @MethodSource("identifiers")
    void hasAnOffenderAndAnInnocent(String id) {
        assertThat(EXAMPLES).as("no method gives the examples of %s", id).containsKey(id);
        List<Example> examples = EXAMPLES.get(id).all();
        assertThat(examples).as("offenders of %s", id).anyMatch(Example::offends);
        assertThat(examples).as("innocents of %s", id).anyMatch(example -> !example.offends());
        assertThat(examples).as(id).allSatisfy(example -> {
            assertThat(example.findings().isEmpty()).as("%s has findings", example.name()).isEqualTo(!example.offends());
            assertThat(example.found(id)).as(example.name()).containsExactlyElementsOf(example.findings());
        });
    }

    @ParameterizedTest
    @MethodSource("identifiers")
    void everySentenceIsFinishedAndSaysTheFigures(String id) {
        List<Finding> findings = EXAMPLES.get(id).all().stream().flatMap(example -> example.found(id).stream()).toList();
        assertThat(findings).as(id).isNotEmpty().allSatisfy(finding -> {
            assertFinished(id, finding.sentence());
            assertThat(finding.sentence()).as(id).doesNotContain("Optional", "null", "[", "]", "{", "}");
        });
        if (WITHOUT_FIGURES.contains(id)) {
            assertThat(findings).as("%s names a part, slot or type", id)
                    .allSatisfy(finding -> assertThat(finding.sentence()).containsPattern("[A-Z]{3}|\\d"));
        } else {
            assertThat(findings).as("%s says what there is and what is allowed", id)
                    .anySatisfy(finding -> assertThat(NUMBER.matcher(finding.sentence()).results().count()).isGreaterThanOrEqualTo(2));
        }
    }

    private static void assertFinished(String id, String sentence) {
        assertThat(sentence).as(id).endsWith(".").doesNotEndWith("..").doesNotContain("%").isEqualTo(sentence.strip());
        assertThat(sentence.length()).as("%s: %s", id, sentence).isGreaterThan(20);
        assertThat(sentence.substring(0, 1)).as("%s: %s", id, sentence).matches("[A-Z]");
    }
}
