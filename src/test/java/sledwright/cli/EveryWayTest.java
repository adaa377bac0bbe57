package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import sledwright.report.text.Json;
import sledwright.samples.RequestGenerator;
import sledwright.web.Servers;
import sledwright.web.Wire;

/**
 * A request has the same answer, byte for byte, from a run of its own, as a line of a batch, and over HTTP from the page's server; what is wrong
 * with it is said in the same words. Runs read the catalogue anew; a batch and the server go on with what they have learned. More by
 * {@code -Dsledwright.answers=200}; other ones by {@code -Dsledwright.seed=100001}.
 */
class EveryWayTest {

    private static final Path SHOP = Path.of("catalogs/heronfold-yard");
    private static final long SEED = Long.getLong("sledwright.seed", 1);
    private static final int ANSWERS = Integer.getInteger("sledwright.answers", 6);
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String TODAY = Run.TODAY.toString();

    /** The drawn request as a line of JSON, which names no catalogue. */
    private static String drawn(long seed) {
        Map<String, Object> request = new Yaml(new SafeConstructor(new LoaderOptions())).load(new RequestGenerator("shop", SHOP).equipped(seed));
        request.remove("catalog");
        request.put("name", "M\u00fcller " + seed);
        try {
            return JSON.writeValueAsString(request);
        } catch (JsonProcessingException impossible) {
            throw new AssertionError(impossible);
        }
    }

    private static Run batch(List<String> requests, String... options) {
        return Run.piped(String.join("\n", requests), arguments(options, "quote", "--batch", "-"));
    }

    private static String[] arguments(String[] options, String... command) {
        return Stream.of(Stream.of(command), Stream.of("--catalog", SHOP.toString(), "--today", TODAY, "--time-limit", "600"), Stream.of(options))
                .flatMap(words -> words).toArray(String[]::new);
    }

    private static Wire.Reply page(String request, String options) {
        URI server = Servers.demo().address();
        return Wire.post(server, "/api/quote?today=%s&time-limit=600%s".formatted(TODAY, options), "application/json", request);
    }

    private static void assertSame(List<String> requests, String page, String... options) {
        List<String> lines = batch(requests, options).out().lines().toList();
        assertThat(lines).hasSameSizeAs(requests);
        for (int i = 0; i < requests.size(); i++) {
            String alone = Run.piped(requests.get(i), arguments(options, "quote", "-", "--format", "json")).out();
            assertThat(alone).as(requests.get(i)).startsWith("{");
            assertThat(lines.get(i) + "\n").as(requests.get(i)).isEqualTo(Json.onOneLine(alone));
            assertThat(page(requests.get(i), page).body()).as(requests.get(i)).isEqualTo(alone);
        }
    }

    @Test
    void answersAreTheSameBytes() {
        assertSame(LongStream.range(SEED, SEED + ANSWERS).mapToObj(EveryWayTest::drawn).toList(), "");
    }

    @Test
    void answersForCustomersAndWithExplanationsAreTheSameBytes() {
        List<String> requests = List.of("{\"kind\": \"quote\", \"require\": {\"cores\": 8, \"memory_gb\": 64}}", "{\"kind\": \"quote\", \"require\": {\"cores\": 8000}}");
        assertSame(requests, "&for=customer", "--for", "customer");
        assertSame(requests.subList(0, 1), "&steps=true&why-not=B1-04", "--steps", "--why-not", "B1-04");
    }

    @Test
    void faultsAreTheSameWords() throws JsonProcessingException {
        List<String> requests = List.of("{\"kind\": \"quote\", \"require\": {\"cores\": \"many\"}, \"colour\": 1}", "{\"kind\": \"order\"}", "[1]",
                "{\"kind\": \"quote\", \"alternatives\": 99999}", "{\"kind\": \"quote\", \"platforms\": [\"NONE\"]}");
        Run batch = batch(requests);
        assertThat(batch.code()).isEqualTo(ExitCode.INPUT_FAULT);
        List<String> lines = batch.out().lines().toList();
        for (int i = 0; i < requests.size(); i++) {
            List<String> said = messages(lines.get(i));
            assertThat(said).as(requests.get(i)).isNotEmpty().isEqualTo(messages(page(requests.get(i), "").body()));
            Run alone = Run.piped(requests.get(i), arguments(new String[0], "quote", "-", "--format", "json"));
            assertThat(alone.err().lines().map(line -> line.replaceFirst("^standard input(:[0-9]+)?: ", ""))).as(requests.get(i)).isEqualTo(said);
        }
    }

    private static List<String> messages(String faults) throws JsonProcessingException {
        List<String> messages = new ArrayList<>();
        for (JsonNode fault : JSON.readTree(faults).get("faults")) {
            messages.add(fault.get("message").asText());
        }
        return messages;
    }

    /** Bytes that are no text are refused everywhere, rather than replaced in one place. */
    @Test
    void whatIsNoTextIsRefusedByABatchAsByARun() {
        byte[] request = "{\"kind\": \"quote\", \"name\": \"M\u00fcller\"}".getBytes(StandardCharsets.ISO_8859_1);
        assertThat(Run.piped(request, arguments(new String[0], "quote", "-")).code()).isEqualTo(ExitCode.INPUT_FAULT);
        Run batch = Run.piped(request, arguments(new String[0], "quote", "--batch", "-"));
        assertThat(batch.code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(batch.out()).startsWith("{\"faults\": [{\"place\": \"-\",\"line\": 1,").contains("Invalid UTF-8");
    }

    /** What is read ahead is bounded, and so are lines; the rest of a line that is too long is passed over. */
    @Test
    void aLineThatIsTooLongIsNamedAndTheNextOneAnswered() {
        String longest = " ".repeat(1_000_000 - 18) + "{\"kind\": \"quote\"}\r";
        String longer = IntStream.range(0, 3).mapToObj(piece -> longest).collect(Collectors.joining());
        List<String> lines = batch(List.of(longer, longest, "{\"kind\": \"quote\"}")).out().lines().toList();
        assertThat(lines.get(0)).isEqualTo("{\"faults\": [{\"place\": \"-\",\"line\": 1,\"value\": null,"
                + "\"message\": \"is a line of more than 1000000 bytes; a request is much shorter\"}]}");
        assertThat(lines.get(1)).isEqualTo(lines.get(2)).contains("\"status\": \"proved\"");
    }
}
