package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Every sentence and clause that the program is made of is said by some command that is run here or in the documents, or stands in what
 * some other test expects. What only a mistake of the program's own makes it say is left out.
 */
class SentencesTest {

    private static final Path TEMPLATES = Path.of("src/main/resources");
    private static final Path SOURCES = Path.of("src/main/java/sledwright");

    /** Sentences that still wait for a run that says them, a line each; one that is said must go from the list. */
    private static final Path WAITING = Path.of("src/test/resources/sentences/waiting.list");

    @TestFactory
    Stream<DynamicTest> everySentenceIsSaidSomewhere() throws IOException {
        Said said = Heard.everything();
        Map<Path, List<String>> clauses = Clauses.ofProgram(Heard.files(SOURCES, ".java"));
        Map<String, List<String>> unsaid = new TreeMap<>();
        clauses.forEach((file, texts) -> unsaid
                .computeIfAbsent(SOURCES.toAbsolutePath().relativize(file).getParent().toString(), name -> new ArrayList<>())
                .addAll(texts.stream().filter(text -> !said.has(text)).map(text -> file.getFileName() + ": " + text.strip()).toList()));
        for (Path template : Heard.files(TEMPLATES, ".ftlh")) {
            unsaid.put(template.getFileName().toString(), TemplateClauses.of(template).stream().filter(text -> !said.has(text)).toList());
        }
        List<String> waiting = Files.readAllLines(WAITING);
        Stream<DynamicTest> byRoom = unsaid.entrySet().stream().map(entry -> DynamicTest.dynamicTest(entry.getKey(),
                () -> assertThat(entry.getValue()).isSubsetOf(waiting)));
        return Stream.concat(byRoom, Stream.of(DynamicTest.dynamicTest("none waits that is said",
                () -> assertThat(waiting).isSubsetOf(unsaid.values().stream().flatMap(List::stream).toList()))));
    }
}
