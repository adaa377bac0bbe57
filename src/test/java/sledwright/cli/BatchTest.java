package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BatchTest {

    private static final String SHOP = "catalogs/heronfold-yard";
    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    private Path folder;

    private static String request(int cores) {
        return "{\"kind\": \"quote\", \"name\": \"M\u00fcller %s\", \"require\": {\"cores\": %s}, \"alternatives\": 2}".formatted(cores, cores);
    }

    @Test
    void everyLineIsAnsweredInOrderAsARunOfItsOwnWouldAnswerIt() throws IOException {
        List<Integer> cores = IntStream.rangeClosed(1, 12).mapToObj(step -> 4 * (step % 5 + 1)).toList();
        Path lines = Files.writeString(folder.resolve("lines.jsonl"), cores.stream().map(BatchTest::request).collect(Collectors.joining("\n")));
        Run run = Run.of("quote", "--batch", lines.toString(), "--catalog", SHOP);
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        List<String> answers = run.out().lines().toList();
        assertThat(answers).hasSameSizeAs(cores);
        for (int i = 0; i < 5; i++) {
            Run alone = Run.piped(request(cores.get(i)), "quote", "-", "--catalog", SHOP, "--format", "json");
            assertThat(answers.get(i)).isEqualTo(alone.out().strip().replaceAll("\n *", ""));
            assertThat(JSON.readTree(answers.get(i))).isEqualTo(JSON.readTree(alone.out()));
        }
        assertThat(run.err()).containsPattern("sledwright: all of 12 requests answered in [0-9.]+ s, [0-9.]+ a second\\R");
    }

    @Test
    void aBrokenLineIsAnsweredWithItsFaultsAndStopsNothing() throws IOException {
        String lines = String.join("\n", "{\"kind\": \"quote\", \"require\": {\"cores\": \"many\"}, \"colour\": 1}", "", "no JSON", request(8),
                "{\"kind\": \"quote\", \"name\": \"a\", \"name\": \"b\"}", "{\"name\": \"" + "x".repeat(1_000_001) + "\"}");
        Run run = Run.piped(lines, "quote", "--batch", "-", "--catalog", SHOP);
        assertThat(run.code()).isEqualTo(ExitCode.INPUT_FAULT);
        List<JsonNode> answers = run.out().lines().map(BatchTest::read).toList();
        assertThat(answers).hasSize(6);
        assertThat(answers.get(0).get("faults")).hasSize(2);
        assertThat(answers.get(0).get("faults").get(0).get("value").asText()).isEqualTo("many");
        assertThat(answers.get(2).get("faults").get(0).get("line").asInt()).isEqualTo(3);
        assertThat(answers.get(2).get("faults").get(0).get("message").asText()).startsWith("not readable as JSON");
        assertThat(answers.get(3).get("status").asText()).isEqualTo("proved");
        assertThat(answers.get(4).get("faults").get(0).get("line").asInt()).isEqualTo(5);
        assertThat(answers.get(4).get("faults").get(0).get("message").asText()).isEqualTo("key \"name\" stands twice");
        assertThat(answers.get(5).has("faults")).isTrue();
        assertThat(run.err()).contains(", 5 with faults");
    }

    private static JsonNode read(String line) {
        try {
            return JSON.readTree(line);
        } catch (IOException broken) {
            throw new AssertionError(line, broken);
        }
    }

    @Test
    void aBatchThatWasBrokenOffGoesOn() {
        String lines = String.join("\n", request(4), request(8), request(16));
        String all = Run.piped(lines, "quote", "--batch", "-", "--catalog", SHOP).out();
        Run rest = Run.piped(lines, "quote", "--batch", "-", "--skip", "2", "--catalog", SHOP);
        assertThat(rest.out()).isEqualTo(all.lines().toList().get(2) + "\n");
    }

    @Test
    void wrongArgumentsAreNamed() {
        assertThat(Run.of("quote", "--batch", "lines.jsonl").err()).contains("name the catalogue's folder");
        assertThat(Run.of("quote", "--batch", "lines.jsonl", "--skip", "-1", "--catalog", SHOP).err()).contains("--skip must be at least 0.");
        assertThat(Run.of("quote", "scenarios/small-web-node.yaml", "--skip", "1").err())
                .contains("--skip passes over lines of a --batch; name one, or leave it out.");
        assertThat(Run.of("quote", "one.yaml", "--batch", "lines.jsonl", "--catalog", SHOP).err())
                .contains("name one file, not one.yaml and --batch lines.jsonl");
        assertThat(Run.of("quote", "--batch", "gone.jsonl", "--catalog", SHOP).err())
                .contains("--batch gone.jsonl cannot be read (there is no such file).");
        for (String format : List.of("csv", "text")) {
            assertThat(Run.of("quote", "--batch", "lines.jsonl", "--catalog", SHOP, "--format", format).err())
                    .contains("--batch writes JSON to standard output; leave --format and --output out.");
        }
    }

    @Test
    void whereAnswersCannotBeWrittenTheNextRunIsToldWhereToGoOn() throws IOException {
        Path lines = Files.writeString(folder.resolve("lines.jsonl"), String.join("\n", request(4), request(4), request(8), request(8)));
        OutputStream full = new OutputStream() {

            private int written;

            @Override
            public void write(int b) throws IOException {
                if (b == '\n' && ++written == 2) {
                    throw new IOException("No space left on device");
                }
            }
        };
        Run run = Run.into(full, Map.of(), false, "quote", "--batch", lines.toString(), "--skip", "1", "--catalog", SHOP);
        assertThat(run.code()).isEqualTo(ExitCode.USAGE);
        assertThat(run.err()).contains("the answers could not be written to standard output (No space left on device).\nMaybe go on with --skip 2.");
    }

    @Test
    void customersSeeNoLots() throws IOException {
        Run run = Run.piped(request(8), "quote", "--batch", "-", "--catalog", SHOP, "--for", "customer");
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(run.out()).doesNotContain("\"lot\": \"", "Heronfold stock", "Kaldvik", "Lindgaard", "Osterby");
    }
}
