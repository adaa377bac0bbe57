package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import sledwright.samples.Folders;

/**
 * What the README and the documents show was really printed. Each console block holds commands, each with what it prints,
 * standard error first; {@code echo $?} shows the exit code of the one before. {@code -Dsledwright.refreshDocs=true} rewrites
 * what is printed today; with {@code -Dsledwright.docs=month} only documents of such a name are run. A {@code ~} is a folder of each
 * document's own. A YAML block that names a shipped file in its first line is that file.
 */
class ReadmeTest {

    private static final Path README = Path.of("README.md");
    private static final Pattern CONSOLE = Pattern.compile("```console\n(.*?)```", Pattern.DOTALL);
    private static final Pattern COMMAND = Pattern.compile("\\$ (?:target/)?sledwright (.*)");
    /** Copies a folder for commands that change it. */
    private static final Pattern COPY = Pattern.compile("\\$ cp -r (\\S+) ~/(\\S+)");
    private static final Pattern WORD = Pattern.compile("'([^']*)'|(\\S+)");
    private static final Pattern FILE = Pattern.compile("```yaml\n# ((?:scenarios|docs/examples)/\\S+)\n(.*?)```", Pattern.DOTALL);

    @TestFactory
    Stream<DynamicTest> everyBlockIsWhatIsPrinted() throws IOException {
        return documents().stream().filter(document -> document.toString().contains(System.getProperty("sledwright.docs", ""))).map(document -> DynamicTest.dynamicTest(document.toString(), () -> {
            String text = Files.readString(document);
            String today = today(text);
            if (Boolean.getBoolean("sledwright.refreshDocs")) {
                Files.writeString(document, today);
            } else {
                assertThat(text).isEqualTo(today);
            }
        }));
    }

    @Test
    void theTourShowsEveryWayToAsk() throws IOException {
        String shown = String.join("\n", CONSOLE.matcher(Files.readString(Path.of("docs", "tour.md"))).results().map(block -> block.group(1)).toList());
        assertThat(shown).contains("$ sledwright quote", "$ sledwright check", "$ sledwright catalog", "--set", "--why-not",
                "What conflicts", "--format json", "--format csv", "$ echo $?");
    }

    @Test
    void theReadmeIsShort() throws IOException {
        assertThat(Files.readAllLines(README)).hasSizeLessThanOrEqualTo(200);
    }

    /** Otherwise a block that nothing runs would pass for one that was run. */
    @Test
    void aCommandThatIsNotRunIsAMistake() {
        assertThat(catchThrowable(() -> printed("$ make coffee\n", Path.of("nowhere")))).isInstanceOf(AssertionError.class);
        assertThat(catchThrowable(() -> printed("$ echo $?\n", Path.of("nowhere")))).isInstanceOf(AssertionError.class);
        assertThat(catchThrowable(() -> printed("no command\n", Path.of("nowhere")))).isInstanceOf(AssertionError.class);
    }

    @Test
    void blocksAreWrittenAnew() throws IOException {
        String stale = "before\n```console\n$ sledwright label ''\nold\n$ echo $?\n9\n```\nafter\n";
        String fault = Run.of("label", "").err();
        assertThat(today(stale)).isEqualTo("before\n```console\n$ sledwright label ''\n" + fault + "$ echo $?\n3\n```\nafter\n");
    }

    @Test
    void theTestCommandIsTheOneThatIsRunOnEveryChange() throws IOException {
        String command = "mvn -B -ntp verify";
        assertThat(Files.readString(README)).contains("```sh\n" + command + "\n```");
        assertThat(Files.readString(Path.of(".ci/run"))).contains("\n" + command + "\n");
    }

    private static List<Path> documents() throws IOException {
        List<Path> documents = new ArrayList<>(List.of(README, Path.of("DEVELOPERS.md")));
        try (Stream<Path> files = Files.list(Path.of("docs"))) {
            files.filter(file -> file.toString().endsWith(".md")).sorted().forEach(documents::add);
        }
        return documents;
    }

    /** The document with what its commands print today and its files as they are. */
    private static String today(String text) throws IOException {
        Path home = Files.createTempDirectory("documents");
        String withOutput = CONSOLE.matcher(text).replaceAll(block ->
                Matcher.quoteReplacement("```console\n" + printed(block.group(1), home) + "```"));
        StringBuilder withFiles = new StringBuilder();
        Matcher files = FILE.matcher(withOutput);
        while (files.find()) {
            files.appendReplacement(withFiles, Matcher.quoteReplacement("```yaml\n# %s\n%s```".formatted(files.group(1),
                    Files.readString(Path.of(files.group(1))))));
        }
        return files.appendTail(withFiles).toString();
    }

    /** The commands of a block, each with what it prints today; what they keep is in {@code home}. */
    private static String printed(String block, Path home) {
        List<String> commands = block.lines().filter(line -> line.startsWith("$ ")).toList();
        assertThat(block).as("a block begins with a command").startsWith("$ ");
        StringBuilder printed = new StringBuilder();
        Run last = null;
        for (String command : commands) {
            printed.append(command).append('\n');
            Matcher ours = COMMAND.matcher(command);
            if (ours.matches()) {
                last = Run.of(Map.of("XDG_DATA_HOME", home.toString(), "USER", "anna"), false, words(ours.group(1), home));
                // ProgressLine shows only where the machine is slow.
                printed.append((last.err().replaceAll("(?m)^sledwright: [0-9.]+ s: .*\\R", "") + last.out()).replace(home.toString(), "~"));
            } else if (COPY.matcher(command).matches()) {
                copied(COPY.matcher(command), home);
            } else {
                assertThat(command).as("a command that is not run here").isEqualTo("$ echo $?");
                assertThat(last).as("no command stands before " + command).isNotNull();
                printed.append(last.code()).append('\n');
            }
        }
        return printed.toString();
    }

    private static void copied(Matcher copy, Path home) {
        assertThat(copy.matches()).isTrue();
        try {
            Folders.copy(Path.of(copy.group(1)), home.resolve(copy.group(2)));
        } catch (IOException full) {
            throw new UncheckedIOException(full);
        }
    }

    /** Words as a shell takes them apart, single quotes and a folder at home being all that is understood. */
    private static String[] words(String arguments, Path home) {
        return WORD.matcher(arguments).results().map(ReadmeTest::word).map(word -> word.startsWith("~/") ? home + word.substring(1) : word)
                .toArray(String[]::new);
    }

    private static String word(MatchResult found) {
        return found.group(1) == null ? found.group(2) : found.group(1);
    }
}
