package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Every sentence and clause that the program is made of is said by some command that is run here or in the documents, or stands in what
 * some other test expects. What only a mistake of the program's own makes it say is left out.
 */
class SentencesTest {

    private static final Path SOURCES = Path.of("src/main/java/sledwright");
    private static final Path UNSAID = Path.of("src/test/resources/unsaid.txt");

    @TestFactory
    Stream<DynamicTest> everySentenceIsSaidSomewhere() throws IOException {
        Said said = Heard.everything();
        Map<Path, List<String>> clauses = Clauses.ofProgram(Heard.files(SOURCES, ".java"));
        Set<String> left = new HashSet<>(left());
        Map<String, List<String>> unsaid = new TreeMap<>();
        clauses.forEach((file, texts) -> unsaid
                .computeIfAbsent(SOURCES.toAbsolutePath().relativize(file).getParent().toString(), name -> new ArrayList<>())
                .addAll(texts.stream().filter(text -> !said.has(text)).map(text -> named(file, text)).filter(text -> !left.contains(text)).toList()));
        Set<String> all = clauses.entrySet().stream().flatMap(entry -> entry.getValue().stream().map(text -> named(entry.getKey(), text)))
                .collect(Collectors.toSet());
        return Stream.concat(unsaid.entrySet().stream().map(entry -> DynamicTest.dynamicTest(entry.getKey(), () -> assertThat(entry.getValue()).isEmpty())),
                Stream.of(DynamicTest.dynamicTest("what is yet to be heard is still in the program", () -> assertThat(all).containsAll(left))));
    }

    private static String named(Path file, String text) {
        return file.getFileName() + ": " + text.strip();
    }

    private static List<String> left() throws IOException {
        return Files.readAllLines(UNSAID).stream().filter(line -> !line.startsWith("#")).toList();
    }
}
