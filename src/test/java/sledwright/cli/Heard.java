package sledwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine;
import sledwright.web.Servers;
import sledwright.web.Wire;

/** Everything that the program is known to say: by runs on the demo, by the documents' runs, and by what tests expect. */
final class Heard {

    private static final Path TESTS = Path.of("src/test/java");
    private static final Path EXPECTED = Path.of("src/test/resources");
    private static final Pattern CONSOLE = Pattern.compile("```console\n(.*?)```", Pattern.DOTALL);

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

    private Heard() {
    }

    static Said everything() throws IOException {
        return new Said(Stream.of(answers(), served(), helps(), documents(), tests(), expectations()).flatMap(List::stream));
    }

    private static List<String> answers() {
        return QUESTIONS.stream().flatMap(question -> Arrays.stream(answer(question).split("\""))).toList();
    }

    /** What the server says of itself. */
    private static List<String> served() {
        URI server = Servers.small().address();
        Stream<String> description = Arrays.stream(Wire.get(server, "/api/openapi.json").body().split("\""));
        Stream<String> pieces = Stream.of("answer?why-not=H2-16", "steps", "chart?figure=cores").flatMap(piece -> Stream.of("", "\nlimit: { price: 20 }", "\nlimit: { price: 470 }", "\nmachines: 2")
                .map(more -> Wire.post(server, "/page/" + piece, "application/yaml", "kind: quote\nrequire: { cores: 8, memory_gb: 32 }" + more).body()));
        return Stream.of(description, Stream.of("/", "/work", "/catalogue").map(page -> Wire.get(server, page).body()), pieces).flatMap(said -> said).toList();
    }

    private static String answer(String question) {
        List<String> words = new ArrayList<>(List.of(question.split(" ")));
        words.set(0, "scenarios/" + words.get(0) + ".yaml");
        words.add(0, "quote");
        words.addAll(List.of("--format", "json"));
        return Run.of(Map.of(), false, words.toArray(String[]::new)).out();
    }

    /** What each command prints of itself. */
    private static List<String> helps() {
        PrintWriter nobody = new PrintWriter(OutputStream.nullOutputStream());
        Terminal terminal = new Terminal(InputStream.nullInputStream(), OutputStream.nullOutputStream(), nobody, Map.of(), () -> Run.TODAY, () -> false);
        return helps(Main.commands(terminal, new Boundary(nobody, false))).toList();
    }

    private static Stream<String> helps(CommandLine command) {
        Stream<String> words = Arrays.stream(command.getCommandSpec().qualifiedName().split(" ")).skip(1);
        String help = Run.of(Stream.concat(words, Stream.of("--help")).toArray(String[]::new)).out();
        return Stream.concat(Stream.of(help), command.getSubcommands().values().stream().flatMap(Heard::helps));
    }

    /** The console blocks, which {@link ReadmeTest} holds to what is printed. */
    private static List<String> documents() throws IOException {
        List<String> blocks = new ArrayList<>();
        for (Path document : Stream.concat(Stream.of(Path.of("README.md")), files(Path.of("docs"), ".md").stream()).toList()) {
            CONSOLE.matcher(Files.readString(document)).results().forEach(block -> blocks.add(block.group(1)));
        }
        return blocks;
    }

    private static List<String> tests() throws IOException {
        List<Path> sources = files(TESTS, "Test.java");
        sources.removeIf(file -> file.endsWith("SentencesTest.java"));
        return Clauses.ofTests(sources).values().stream().flatMap(List::stream).toList();
    }

    private static List<String> expectations() throws IOException {
        List<String> lines = new ArrayList<>();
        for (Path file : files(EXPECTED, "expected.txt")) {
            lines.addAll(Files.readAllLines(file));
        }
        for (Path file : files(SentenceCasesTest.CASES, ".txt")) {
            SentenceCasesTest.read(file).forEach(one -> lines.addAll(one.sentences()));
        }
        return lines;
    }

    static List<Path> files(Path folder, String ending) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> file.toString().endsWith(ending)).sorted().collect(Collectors.toList());
        }
    }
}
