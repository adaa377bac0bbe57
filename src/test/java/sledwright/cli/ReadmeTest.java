package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * What the README and the documents show was really printed. Each console block holds a command and what it prints, standard
 * error first; {@code -Dsledwright.refreshDocs=true} writes anew what is printed today. A YAML block that names a shipped file in its first line is
 * that file.
 */
class ReadmeTest {

    private static final Pattern CONSOLE = Pattern.compile("```console\n\\$ sledwright ([^\n]*)\n(.*?)```", Pattern.DOTALL);
    private static final Pattern FILE = Pattern.compile("```yaml\n# (scenarios/\\S+)\n(.*?)```", Pattern.DOTALL);

    @TestFactory
    Stream<DynamicTest> everyBlockIsWhatIsPrinted() throws IOException {
        return documents().stream().map(document -> DynamicTest.dynamicTest(document.toString(), () -> {
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
    void theReadmeShowsCommands() throws IOException {
        assertThat(CONSOLE.matcher(Files.readString(Path.of("README.md"))).results()).hasSizeGreaterThanOrEqualTo(5);
    }

    @Test
    void theTestCommandIsTheOneThatIsRunOnEveryChange() throws IOException {
        String command = "mvn -B -ntp verify";
        assertThat(Files.readString(Path.of("README.md"))).contains("```sh\n" + command + "\n```");
        assertThat(Files.readString(Path.of(".ci/run"))).contains("exec " + command);
    }

    private static List<Path> documents() throws IOException {
        List<Path> documents = new ArrayList<>(List.of(Path.of("README.md")));
        try (Stream<Path> files = Files.list(Path.of("docs"))) {
            // The labels' blocks quote their arguments as a shell does; LabelCommandTest runs them.
            files.filter(file -> file.toString().endsWith(".md") && !file.endsWith("labels.md")).sorted().forEach(documents::add);
        }
        return documents;
    }

    private static String today(String text) throws IOException {
        Matcher commands = CONSOLE.matcher(text);
        StringBuilder withOutput = new StringBuilder();
        while (commands.find()) {
            Run run = Run.of(Map.of(), false, Arrays.asList(commands.group(1).split(" ")).toArray(String[]::new));
            String block = "```console\n$ sledwright %s\n%s%s```".formatted(commands.group(1), run.err(), run.out());
            commands.appendReplacement(withOutput, Matcher.quoteReplacement(block));
        }
        commands.appendTail(withOutput);
        Matcher files = FILE.matcher(withOutput.toString());
        StringBuilder withFiles = new StringBuilder();
        while (files.find()) {
            files.appendReplacement(withFiles, Matcher.quoteReplacement("```yaml\n# %s\n%s```".formatted(files.group(1),
                    Files.readString(Path.of(files.group(1))))));
        }
        files.appendTail(withFiles);
        return withFiles.toString();
    }
}
