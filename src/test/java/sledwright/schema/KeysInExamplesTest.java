package sledwright.schema;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every key of every file stands in the documents in an example that is a shipped file, which a command there reads. */
class KeysInExamplesTest {

    private static final Path DOCS = Path.of("docs");
    private static final ObjectMapper YAML = new ObjectMapper(new YAMLFactory());
    /** ReadmeTest holds such blocks to their files, and runs the commands. */
    private static final Pattern BLOCK = Pattern.compile("```yaml\n# ((?:scenarios|docs/examples)/\\S+)\n");
    private static final Pattern COMMAND = Pattern.compile("(?m)^\\$ sledwright (.*)$");

    private static String documents() throws IOException {
        StringBuilder all = new StringBuilder();
        try (Stream<Path> files = Files.list(DOCS)) {
            for (Path file : files.filter(path -> path.toString().endsWith(".md")).sorted().toList()) {
                all.append(Files.readString(file));
            }
        }
        return all.toString();
    }

    /** The shown files that some command reads; those of a shop are read where its folder is. */
    private static List<Path> shown(String documents) {
        List<String> commands = COMMAND.matcher(documents).results().map(found -> found.group(1)).toList();
        return BLOCK.matcher(documents).results().map(found -> found.group(1)).distinct().filter(file -> commands.stream()
                .anyMatch(command -> command.contains(file) || file.startsWith("docs/examples/shop/") && command.equals("catalog docs/examples/shop"))).map(Path::of).toList();
    }

    private static Format format(Path file, JsonNode root) {
        String folder = file.getParent().getFileName().toString();
        return folder.equals("platforms") ? Format.PLATFORM : folder.equals("enclosures") ? Format.ENCLOSURE : file.endsWith("catalog.yaml") ? Format.CATALOG
                : root.has("kind") ? Format.valueOf(root.get("kind").asText().toUpperCase(java.util.Locale.ROOT)) : Format.MAPPING;
    }

    @ParameterizedTest
    @EnumSource(Format.class)
    void everyKeyIsShownInAFileThatIsRead(Format format) throws IOException {
        JsonNode schema = new ObjectMapper().readTree(DOCS.resolve("schemas").resolve(format.name().toLowerCase(java.util.Locale.ROOT) + ".schema.json").toFile());
        Keys keys = new Keys(schema);
        Set<String> all = new TreeSet<>();
        keys.collect(schema, "", all, new HashSet<>());
        assertThat(all).hasSizeGreaterThan(10);
        Set<String> shown = new TreeSet<>();
        for (Path file : shown(documents())) {
            JsonNode root = YAML.readTree(file.toFile());
            if (format(file, root) == format) {
                keys.find(schema, root, "", shown);
            }
        }
        all.removeAll(shown);
        assertThat(all).as("keys of " + format + " without an example").isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"processors.csv", "memory.csv", "offers.csv", "drives.csv", "cards.csv", "extras.csv"})
    void everyColumnIsShown(String table) throws IOException {
        String text = Files.readString(DOCS.resolve("examples/shop").resolve(table));
        assertThat(Files.readString(DOCS.resolve("examples.md"))).contains("```csv\n" + text + "```");
        List<String> lines = Files.readAllLines(DOCS.resolve("formats.md"));
        List<String> columns = new ArrayList<>();
        for (String line : lines.subList(Math.max(lines.indexOf("### " + table), lines.indexOf("#### " + table)) + 1, lines.size())) {
            if (line.startsWith("#")) {
                break;
            }
            if (line.startsWith("| `")) {
                columns.add(line.substring(3, line.indexOf('`', 3)));
            }
        }
        assertThat(columns).isNotEmpty();
        assertThat(text.lines().findFirst().orElseThrow().split(",")).containsExactlyInAnyOrderElementsOf(columns);
    }

    @Test
    void aFileThatNoCommandReadsCountsForNothing() {
        assertThat(shown("```yaml\n# docs/examples/quote.yaml\nx: 1\n```\n$ sledwright quote docs/examples/other.yaml\n")).isEmpty();
        assertThat(shown("```yaml\n# docs/examples/quote.yaml\nx: 1\n```\n$ sledwright quote docs/examples/quote.yaml\n")).hasSize(1);
    }

    /** Keys by their paths; what has a name of its own, or stands in a list, adds nothing to them. */
    private record Keys(JsonNode schema) {

        private JsonNode resolved(JsonNode node) {
            return node.has("$ref") ? schema.at(node.get("$ref").asText().substring(1)) : node;
        }

        /** What a value may be instead, each by itself. */
        private List<JsonNode> readings(JsonNode node) {
            List<JsonNode> all = new ArrayList<>(List.of(resolved(node)));
            for (String word : List.of("oneOf", "anyOf", "allOf")) {
                all.get(0).path(word).forEach(one -> all.addAll(readings(one)));
            }
            return all;
        }

        void collect(JsonNode node, String path, Set<String> all, Set<JsonNode> above) {
            for (JsonNode reading : readings(node)) {
                reading.path("properties").fields().forEachRemaining(key -> {
                    all.add(path + key.getKey());
                    if (!above.contains(key.getValue())) {
                        collect(key.getValue(), path + key.getKey() + ".", all, above);
                    }
                });
                if (reading.path("additionalProperties").isObject()) {
                    collect(reading.get("additionalProperties"), path, all, above);
                }
                if (reading.has("items")) {
                    collect(reading.get("items"), path, all, above);
                }
            }
        }

        void find(JsonNode node, JsonNode value, String path, Set<String> shown) {
            for (JsonNode reading : readings(node)) {
                if (value.isArray()) {
                    value.forEach(one -> find(reading.path("items"), one, path, shown));
                }
                Map<String, JsonNode> fields = new LinkedHashMap<>();
                value.fields().forEachRemaining(field -> fields.put(field.getKey(), field.getValue()));
                fields.forEach((name, inner) -> {
                    if (reading.path("properties").has(name)) {
                        shown.add(path + name);
                        find(reading.at("/properties").get(name), inner, path + name + ".", shown);
                    } else if (reading.path("additionalProperties").isObject()) {
                        find(reading.get("additionalProperties"), inner, path, shown);
                    }
                });
            }
        }
    }
}
