package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Commands and whole sentences that each must say. A file of {@code sentences} has a command in each line that begins with {@code $},
 * its exit code behind {@code =} where it is not 0, and under it what it says, a sentence a line; {@code #} begins a remark.
 */
class SentenceCasesTest {

    static final Path CASES = Path.of("src/test/resources/sentences");

    private static final Pattern WORD = Pattern.compile("'([^']*)'|(\\S+)");
    private static final Pattern INLINE = Pattern.compile("</?(?:b|span|strong|em|a|small|abbr|time)(?: [^>]*)?>");
    private static final Pattern TAG = Pattern.compile("<[^>]*>");

    /** One command, the exit code it must end with and what it must say. */
    record Case(String command, int code, List<String> sentences) {

        @Override
        public String toString() {
            return command;
        }
    }

    static Stream<Case> cases() throws IOException {
        List<Case> cases = new ArrayList<>();
        for (Path file : Heard.files(CASES, ".txt")) {
            cases.addAll(read(file));
        }
        return cases.stream();
    }

    static List<Case> read(Path file) throws IOException {
        List<Case> cases = new ArrayList<>();
        for (String line : Files.readAllLines(file)) {
            if (line.startsWith("$ ")) {
                String[] ends = line.substring(2).split(" = (?=\\d$)");
                cases.add(new Case(ends[0], ends.length == 1 ? ExitCode.DONE : Integer.parseInt(ends[1]), new ArrayList<>()));
            } else if (!line.isBlank() && !line.startsWith("#")) {
                cases.get(cases.size() - 1).sentences().add(line);
            }
        }
        return cases;
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void saysAllOfIt(Case one) {
        String[] words = WORD.matcher(one.command()).results().map(SentenceCasesTest::word).toArray(String[]::new);
        Run run = Run.of(words);
        assertThat(run.code()).as(run.err()).isEqualTo(one.code());
        String said = plain(run.err() + "\n" + run.out());
        assertThat(one.sentences()).isNotEmpty().allSatisfy(sentence -> assertThat(said).contains(sentence));
    }

    /** What a reader sees, in one line: no tags, and no breaks where a line was full. */
    private static String plain(String text) {
        String words = text.stripLeading().startsWith("<") ? TAG.matcher(INLINE.matcher(text).replaceAll("")).replaceAll(" ") : text;
        return words.replace("&#39;", "'").replace("&quot;", "\"").replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&")
                .replaceAll("\\s+", " ");
    }

    private static String word(MatchResult found) {
        return found.group(1) == null ? found.group(2) : found.group(1);
    }
}
