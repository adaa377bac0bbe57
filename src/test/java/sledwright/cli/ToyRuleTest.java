package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.rules.PartRule;
import sledwright.samples.Folders;
import sledwright.samples.ToyRule;

/** A rule is one class and one line that names it: check, search, why-not, conflicts, upgrades and orders all have it from there. */
class ToyRuleTest {

    private static final String WISHES = "require: { cores: 8, memory_gb: 32, processors: 1 }\nlimit: { altitude_m: 1500 }\nalternatives: 1\n";
    private static final String END = "--end--";

    @TempDir
    static Path folder;

    private static String check;
    private static String quote;
    private static String impossible;
    private static String order;

    @BeforeAll
    static void ask() throws IOException, InterruptedException {
        Path line = Files.createDirectories(folder.resolve("META-INF/services")).resolve(PartRule.class.getName());
        Files.writeString(line, ToyRule.class.getName() + "\n");
        Path asked = Files.writeString(folder.resolve("quote.yaml"), "kind: quote\nplatforms: [WREN-2]\n" + WISHES);
        Path lines = Files.writeString(folder.resolve("order.yaml"),
                "kind: order\nlines:\n  web: { machines: 2, platforms: [WREN-2], require: { cores: 8, memory_gb: 32, processors: 1 }, limit: { altitude_m: 1500 } }\n");
        Path build = Files.writeString(folder.resolve("build.yaml"), """
                kind: build
                platform: WREN-2
                processor: H1-08
                processors: 1
                cooling: WREN-HS-1
                supply: RS-750
                supply_count: 1
                limit: { altitude_m: 1500 }
                modules: { 1A1: M16, 1B1: M16 }
                """);
        String[] answers = run(List.of(List.of("check", build.toString()), List.of("quote", asked.toString(), "--why-not", "H1-08"),
                List.of("quote", asked.toString(), "--set", "use=[H1-08]", "--format", "json"), List.of("order", lines.toString())));
        check = answers[0];
        quote = answers[1];
        impossible = answers[2];
        order = answers[3];
    }

    /** Java finds such a file when it starts, so that another Java is started with it. */
    private static String[] run(List<List<String>> commands) throws IOException, InterruptedException {
        List<String> words = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1",
                "-cp", System.getProperty("java.class.path") + File.pathSeparator + folder, ToyRuleTest.class.getName()));
        for (List<String> command : commands) {
            words.addAll(command);
            words.addAll(List.of("--catalog", Folders.SHOP.toString(), END));
        }
        Process process = new ProcessBuilder(words).redirectError(ProcessBuilder.Redirect.INHERIT).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).isZero();
        String[] answers = said.split(END + "\n");
        assertThat(answers).hasSameSizeAs(commands);
        return answers;
    }

    /** Runs commands one after the other and prints what each says. */
    public static void main(String[] words) {
        List<String> rest = Arrays.asList(words);
        StringBuilder said = new StringBuilder();
        while (!rest.isEmpty()) {
            int end = rest.indexOf(END);
            Run run = Run.of(rest.subList(0, end).toArray(String[]::new));
            said.append(run.code()).append('\n').append(run.out()).append(run.err()).append(END).append('\n');
            rest = rest.subList(end + 1, rest.size());
        }
        System.out.write(said.toString().getBytes(StandardCharsets.UTF_8), 0, said.toString().getBytes(StandardCharsets.UTF_8).length);
        System.out.flush();
    }

    @Test
    void checkNamesIt() {
        assertThat(check).startsWith("4\n").contains("toy-rule", "H1-08 has eight cores, which the toy rule forbids up there.");
    }

    @Test
    void theSearchKeepsIt() {
        assertThat(quote).startsWith("0\n").contains("proved", "1 x H1-10").doesNotContain("1 x H1-08");
        assertThat(Run.of("quote", folder.resolve("quote.yaml").toString(), "--catalog", Folders.SHOP.toString()).out())
                .as("without the rule").contains("1 x H1-08");
    }

    @Test
    void whyNotNamesIt() {
        assertThat(quote.substring(quote.indexOf("Why not H1-08"))).contains("toy-rule", "a site at 1500 m");
    }

    @Test
    void conflictsNameIt() {
        assertThat(impossible).startsWith("4\n").contains("\"toy-rule\"", "Take a site at 1000 m instead of 1500 m");
    }

    @Test
    void ordersKeepIt() {
        assertThat(order).startsWith("0\n").contains("1 x H1-10").doesNotContain("1 x H1-08");
    }
}
