package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Every sentence and clause that explanations are made of is said by some command on the demo, or, where the demo gives no cause for it,
 * stands in what some other test expects.
 */
class SentencesTest {

    private static final Path SOURCES = Path.of("src/main/java/sledwright/explain");

    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");
    private static final Pattern BLANK = Pattern.compile("%[sd]");
    /** Two words of letters in a row: less is no clause. */
    private static final Pattern CLAUSE = Pattern.compile("[a-z]{2,} [a-z]{2,}");

    /** Text that goes on in the next line of a source. */
    private static final Pattern CONTINUED = Pattern.compile("\"\\s*\\+\\s*\"");

    private static final List<String> QUESTIONS = List.of(
            "render-node --steps --why-not S1-18X --why-not FINCH-S4 --why-not PS-460S",
            "small-web-node --why-not PS-1100P --why-not NV5R64-24-48 --why-not LAPWING-HS-PIPE --why-not BR3R8-24-13",
            "cache-node --why-not S1-12",
            "best-value-host --why-not K1-14",
            "too-much-for-the-money --steps --why-not S1-06",
            "scarce-batch --set machines=60",
            "rank-sparing-archive --set limit.power_w=200",
            "hot-mountain-site --set limit.inlet_c=44",
            "low-line-mains --set require.cores=200",
            "mirrored-ledger --set limit.power_w=150",
            "render-node --set limit.conditions=[new]",
            "render-node --set require.processors=4",
            "render-node --set forbid=[S1-18X] --why-not S1-18X",
            "render-node --set use=[S1-18X,S1-06]",
            "small-web-node --set limit.power_w=20",
            "render-node --set limit.conditions=[new] --set platforms=[WHEATEAR-R1]",
            "low-line-mains --set limit.mains_v=100 --set require.cores=190",
            "in-memory-database",
            "widest-memory",
            "cache-node --why-not BR3R8-24-13",
            "four-years-of-power");

    @Test
    void everySentenceIsSaidSomewhere() throws IOException {
        String said = Stream.concat(QUESTIONS.stream().map(SentencesTest::answer), expectations()).collect(Collectors.joining("\n"));
        List<String> unsaid = new ArrayList<>();
        try (Stream<Path> files = Files.list(SOURCES)) {
            for (Path file : files.filter(path -> path.toString().endsWith(".java")).sorted().toList()) {
                clauses(file).filter(clause -> !isSaid(clause, said))
                        .forEach(clause -> unsaid.add(file.getFileName() + ": " + clause));
            }
        }
        assertThat(unsaid).isEmpty();
    }

    private static Stream<String> expectations() throws IOException {
        List<String> sources = new ArrayList<>();
        try (Stream<Path> files = Files.walk(Path.of("src/test/java"))) {
            for (Path file : files.filter(path -> path.toString().endsWith("Test.java") && !path.endsWith("SentencesTest.java")).toList()) {
                sources.add(CONTINUED.matcher(Files.readString(file)).replaceAll(""));
            }
        }
        return sources.stream();
    }

    private static String answer(String question) {
        List<String> words = new ArrayList<>(List.of(question.split(" ")));
        words.set(0, "scenarios/" + words.get(0) + ".yaml");
        words.add(0, "quote");
        words.addAll(List.of("--format", "json"));
        return Run.of(Map.of(), false, words.toArray(String[]::new)).out();
    }

    /** The literals of a class that hold a clause, but for those of its comments and faults. */
    private static Stream<String> clauses(Path file) {
        try {
            return Files.readAllLines(file).stream().filter(line -> !line.strip().startsWith("*") && !line.contains("Exception("))
                    .flatMap(line -> LITERAL.matcher(line).results().map(found -> found.group(1)))
                    .filter(literal -> CLAUSE.matcher(literal).find()).distinct();
        } catch (IOException gone) {
            throw new UncheckedIOException(gone);
        }
    }

    private static boolean isSaid(String clause, String said) {
        String pattern = Stream.of(BLANK.split(clause.replace("%%", "%"), -1)).map(Pattern::quote).collect(Collectors.joining("[^\"\\n]*?"));
        return Pattern.compile(pattern, Pattern.CASE_INSENSITIVE).matcher(said).find();
    }
}
