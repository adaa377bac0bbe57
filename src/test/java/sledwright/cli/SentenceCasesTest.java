package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipInputStream;
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
    private static final Pattern SPOKEN = Pattern.compile(" (?:content|aria-label|name)=\"([^\"]*)\"");
    private static final Pattern TAG = Pattern.compile("(?s)<(style|script)[ >].*?</\\1>|<[^>]*>");

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
    void saysAllOfIt(Case one) throws IOException {
        String[] words = WORD.matcher(one.command()).results().map(SentenceCasesTest::word).toArray(String[]::new);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Run run = Run.into(out, Map.of(), false, words);
        assertThat(run.code()).as(run.err()).isEqualTo(one.code());
        String said = plain(run.err()) + plain(text(out.toByteArray()));
        assertThat(one.sentences()).isNotEmpty().allSatisfy(sentence -> assertThat(said).contains(sentence));
    }

    /** Of a workbook, what its parts hold. */
    private static String text(byte[] bytes) throws IOException {
        if (bytes.length < 2 || bytes[0] != 'P' || bytes[1] != 'K') {
            return new String(bytes, StandardCharsets.UTF_8);
        }
        StringBuilder parts = new StringBuilder();
        try (ZipInputStream workbook = new ZipInputStream(new ByteArrayInputStream(bytes))) {
            while (workbook.getNextEntry() != null) {
                parts.append(new String(workbook.readAllBytes(), StandardCharsets.UTF_8)).append(' ');
            }
        }
        return parts.toString();
    }

    /** What a reader sees or hears, in one line: no tags, but the words in them, and no breaks where a line was full. */
    private static String plain(String text) {
        String words = text;
        if (text.stripLeading().startsWith("<")) {
            String spoken = SPOKEN.matcher(text).results().map(found -> found.group(1)).collect(Collectors.joining(" "));
            words = TAG.matcher(INLINE.matcher(text).replaceAll("")).replaceAll(" ") + " " + spoken;
        }
        return words.replace("&#39;", "'").replace("&quot;", "\"").replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&")
                .replaceAll("[\\s\u00a0]+", " ");
    }

    private static String word(MatchResult found) {
        return found.group(1) == null ? found.group(2) : found.group(1);
    }
}
