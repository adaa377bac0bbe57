package sledwright.catalog;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sledwright.input.CsvReader;
import sledwright.input.CsvReader.Columns;
import sledwright.input.Faults;
import sledwright.input.Source;

/** The document of formats says what the readers do. */
class FormatsDocumentTest {

    private static final Path DOCUMENT = Path.of("docs/formats.md");
    private static final Path SCHEMAS = Path.of("docs/schemas");
    private static final Path CASES = Path.of("src/test/resources/faults");

    private record Row(String needed, String range) {
    }

    /** The table under a heading: name -> row. */
    private static Map<String, Row> table(String heading) throws IOException {
        List<String> lines = Files.readAllLines(DOCUMENT);
        Map<String, Row> rows = new LinkedHashMap<>();
        int start = Math.max(lines.indexOf("### " + heading), lines.indexOf("#### " + heading));
        assertThat(start).as("heading " + heading).isNotNegative();
        for (String line : lines.subList(start + 1, lines.size())) {
            if (line.startsWith("#")) {
                break;
            }
            if (line.startsWith("| `")) {
                List<String> cells = Arrays.stream(line.split("\\|")).map(String::strip).toList();
                rows.put(cells.get(1).replace("`", ""), new Row(cells.get(2), cells.get(3)));
            }
        }
        return rows;
    }

    private static void assertColumns(String file, Columns columns) throws IOException {
        Map<String, Row> rows = table(file);
        assertThat(rows.keySet()).containsExactlyInAnyOrderElementsOf(Stream.concat(columns.needed().stream(), columns.optional().stream()).toList());
        rows.forEach((name, row) -> assertThat(row.needed()).as(name).isEqualTo(columns.needed().contains(name) ? "yes" : "no"));
    }

    @Test
    void columns() throws IOException {
        assertColumns("processors.csv", PartTables.PROCESSOR_COLUMNS);
        assertColumns("memory.csv", PartTables.MODULE_COLUMNS);
        assertColumns("offers.csv", OfferTable.COLUMNS);
        assertColumns("drives.csv", EquipmentTables.DRIVE_COLUMNS);
        assertColumns("cards.csv", EquipmentTables.CARD_COLUMNS);
        assertColumns("extras.csv", EquipmentTables.EXTRA_COLUMNS);
    }

    /** What a figure of 1e17 is answered with states the range that the reader applies. */
    @ParameterizedTest
    @CsvSource({"processors.csv", "memory.csv", "offers.csv", "drives.csv", "extras.csv"})
    void rangesOfColumns(String file) throws IOException {
        Map<String, Row> rows = table(file);
        Path absurd = Files.createTempFile("absurd", ".csv");
        Files.write(absurd, List.of(String.join(",", rows.keySet()),
                rows.values().stream().map(row -> row.range().isEmpty() ? "4" : "1e17").collect(Collectors.joining(","))));
        Faults faults = new Faults();
        switch (file) {
            case "processors.csv" -> PartTables.processors(TableRows.of(CsvReader.read(Source.of(absurd), PartTables.PROCESSOR_COLUMNS, faults)), faults);
            case "memory.csv" -> PartTables.modules(TableRows.of(CsvReader.read(Source.of(absurd), PartTables.MODULE_COLUMNS, faults)), faults);
            case "drives.csv" -> EquipmentTables.drives(TableRows.of(CsvReader.read(Source.of(absurd), EquipmentTables.DRIVE_COLUMNS, faults)), faults);
            case "extras.csv" -> EquipmentTables.extras(TableRows.of(CsvReader.read(Source.of(absurd), EquipmentTables.EXTRA_COLUMNS, faults)), faults);
            default -> OfferTable.read(TableRows.of(CsvReader.read(Source.of(absurd), OfferTable.COLUMNS, faults)), ShopReader.STAND_IN, faults);
        }
        Files.delete(absurd);
        List<String> messages = faults.all().stream().map(fault -> fault.message()).toList();
        rows.forEach((name, row) -> {
            if (!row.range().isEmpty()) {
                assertThat(messages).contains(name + " \"1e17\": must be " + (row.range().startsWith("above") ? "" : "from ") + row.range());
            }
        });
    }

    @ParameterizedTest
    @CsvSource({"catalog, catalog.yaml", "platform, platforms/*.yaml", "enclosure, enclosures/*.yaml", "quote, kind: quote", "order, kind: order", "upgrade, kind: upgrade", "restock, kind: restock"})
    void keysAndRangesAreThoseOfTheSchema(String schema, String heading) throws IOException {
        Map<String, Row> rows = table(heading);
        JsonNode root = new ObjectMapper().readTree(SCHEMAS.resolve(schema + ".schema.json").toFile());
        Set<String> leaves = new TreeSet<>();
        collect(root, "", leaves, rows);
        assertThat(rows.keySet()).containsExactlyInAnyOrderElementsOf(leaves);
    }

    /** The other keys of a line are those of a quote. */
    @Test
    void keysAndRangesOfALine() throws IOException {
        JsonNode line = new ObjectMapper().readTree(SCHEMAS.resolve("order.schema.json").toFile()).at("/$defs/lines");
        assertThat(line.has("required")).isFalse();
        Map<String, Row> rows = table("A line of an order");
        assertThat(rows).containsOnlyKeys("name", "priority", "uniform", "objective");
        rows.forEach((key, row) -> {
            assertThat(row.needed()).as(key).isEqualTo("no");
            assertThat(line.path("properties").has(key)).as(key).isTrue();
            range(line.path("properties").path(key), key, row);
        });
    }

    /** Adds the path of every key; those whose value is a section or a list of sections only where the document has a row for them. */
    private static void collect(JsonNode node, String path, Set<String> leaves, Map<String, Row> rows) {
        JsonNode sections = Stream.of(node.path("items"), node.path("additionalProperties"), onlySection(node.path("oneOf")))
                .filter(child -> child.has("properties")).findFirst().orElse(node);
        if (!path.isEmpty() && (!sections.has("properties") || rows.containsKey(path))) {
            leaves.add(path);
            range(node, path, rows.get(path));
        }
        Set<String> required = new TreeSet<>();
        sections.path("required").forEach(name -> required.add(name.asText()));
        sections.path("properties").properties().forEach(entry -> {
            String key = path.isEmpty() ? entry.getKey() : path + "." + entry.getKey();
            collect(entry.getValue(), key, leaves, rows);
            if (rows.containsKey(key)) {
                assertThat(rows.get(key).needed()).as(key).isEqualTo(required.contains(entry.getKey()) ? "yes" : "no");
            }
        });
    }

    /** The one of several shapes that has keys, where the others have none. */
    private static JsonNode onlySection(JsonNode shapes) {
        List<JsonNode> sections = StreamSupport.stream(shapes.spliterator(), false).filter(shape -> shape.has("properties")).toList();
        return sections.size() == 1 ? sections.get(0) : MissingNode.getInstance();
    }

    private static void range(JsonNode node, String path, Row row) {
        List<JsonNode> places = List.of(node, node.path("items"), node.path("additionalProperties"), node.path("oneOf").path(1));
        for (JsonNode place : places) {
            if (row != null && place.has("maximum") && !row.range().isEmpty()) {
                String least = place.has("minimum") ? place.get("minimum").asText() + " to " : "above " + place.get("exclusiveMinimum").asText() + ", at most ";
                assertThat(row.range()).as(path).startsWith(least + place.get("maximum").asText());
            }
        }
    }

    @Test
    void faultsAreReallyPrinted() throws IOException {
        Set<String> printed = new TreeSet<>();
        try (Stream<Path> files = Files.walk(CASES)) {
            for (Path file : files.filter(path -> path.endsWith("expected.txt")).toList()) {
                printed.addAll(Files.readAllLines(file));
            }
        }
        String text = Files.readString(DOCUMENT);
        List<String> shown = text.substring(text.lastIndexOf("```\n", text.lastIndexOf("```") - 1) + 4, text.lastIndexOf("```")).lines().toList();
        assertThat(shown).hasSizeGreaterThan(10);
        assertThat(printed).containsAll(shown);
    }
}
