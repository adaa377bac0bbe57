package sledwright.request;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.catalog.CatalogBounds;
import sledwright.input.Bounds;

/** The published schemas say what the readers do. */
class SchemaTest {

    private static final Path SCHEMAS = Path.of("docs/schemas");
    private static final SchemaRegistry REGISTRY = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);

    private static List<Error> errors(String schema, Path file) throws IOException {
        Schema loaded = REGISTRY.getSchema(Files.readString(SCHEMAS.resolve(schema + ".schema.json")));
        return loaded.validate(Files.readString(file), InputFormat.YAML);
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> found = Files.list(folder)) {
            return found.filter(file -> !file.toString().endsWith(".csv") || !folder.endsWith("scenarios")).sorted().toList();
        }
    }

    static Stream<Path> catalogues() throws IOException {
        List<Path> folders = new ArrayList<>(files(Path.of("catalogs")));
        folders.add(Path.of("src/test/resources/shop"));
        return folders.stream();
    }

    static Stream<Path> scenarios() throws IOException {
        return files(Path.of("scenarios")).stream();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("catalogues")
    void soundCataloguesPass(Path folder) throws IOException {
        assertThat(errors("catalog", folder.resolve("catalog.yaml"))).isEmpty();
        for (Path platform : files(folder.resolve("platforms"))) {
            assertThat(errors("platform", platform)).as(platform.toString()).isEmpty();
        }
        for (Path enclosure : files(folder.resolve("enclosures"))) {
            assertThat(errors("enclosure", enclosure)).as(enclosure.toString()).isEmpty();
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("scenarios")
    void soundRequestsPass(Path file) throws IOException {
        assertThat(errors(RequestReader.open(file, List.of()).kind().label(), file)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"catalog, shop/shop/catalog.yaml", "catalog, shop-shapes/shop/catalog.yaml",
            "platform, platform-figures/shop/platforms/wren-2.yaml", "platform, platform-slots/shop/platforms/wren-2.yaml",
            "platform, platform-slots/shop/platforms/reed-sled.yaml", "platform, yaml-bombs/shop/platforms/loop.yaml",
            "enclosure, enclosure-figures/shop/enclosures/reed-frame.yaml", "enclosure, enclosure-shapes/shop/enclosures/bare.yaml",
            "enclosure, enclosure-shapes/shop/enclosures/reed-frame.yaml",
            "quote, request-keys/request.yaml", "quote, request-shapes/request.yaml", "quote, request-no-kind/request.yaml",
            "quote, request-unknown-kind/request.yaml", "restock, restock-keys/request.yaml", "quote, request-and-shop/request.yaml",
            "build, build-missing/request.yaml", "build, build-names/request.yaml", "build, build-supply/request.yaml",
            "order, order-keys/request.yaml", "order, order-lines/request.yaml", "order, order-empty/request.yaml",
            "order, order-no-lines/request.yaml", "order, order-shapes/request.yaml",
            "upgrade, upgrade-keys/request.yaml", "upgrade, upgrade-no-build/request.yaml"})
    void whatTheReadersRefuseFails(String schema, String file) throws IOException {
        assertThat(errors(schema, Path.of("src/test/resources/faults").resolve(file))).isNotEmpty();
    }

    @Test
    void rangesAreTheReaders() throws IOException {
        assertRanges("catalog", Map.of("/properties/labour/properties/per_machine", CatalogBounds.MONEY,
                "/properties/throughput_factors/additionalProperties", CatalogBounds.FACTOR));
        String memory = "/properties/memory/properties/";
        String supply = "/properties/power/properties/supplies/items/properties/";
        assertRanges("platform", Map.ofEntries(
                Map.entry("/properties/processors/properties/counts/items", CatalogBounds.PROCESSOR_COUNT),
                Map.entry("/properties/processors/properties/max_tdp_w", CatalogBounds.TDP_W),
                Map.entry(memory + "channels", CatalogBounds.CHANNELS),
                Map.entry(memory + "slots_per_channel", CatalogBounds.SLOTS_PER_CHANNEL),
                Map.entry(memory + "max_logical_ranks/additionalProperties", CatalogBounds.CHANNEL_RANKS),
                Map.entry(memory + "speeds/items/properties/ranks/items", CatalogBounds.RANKS),
                Map.entry(memory + "speeds/items/properties/mts/items", CatalogBounds.MTS),
                Map.entry(memory + "max_distinct_capacities", CatalogBounds.CAPACITIES),
                Map.entry(memory + "counts_per_socket/items", CatalogBounds.MODULE_COUNT),
                Map.entry(memory + "modes/properties/mirrored/oneOf/1", CatalogBounds.FRACTION),
                Map.entry("/properties/cooling/items/properties/max_tdp_w", CatalogBounds.TDP_W),
                Map.entry("/properties/thermal/properties/altitude_from_m", CatalogBounds.ALTITUDE_M),
                Map.entry("/properties/thermal/properties/metres_per_kelvin", CatalogBounds.METRES_PER_KELVIN),
                Map.entry("/properties/thermal/properties/inlet/items/properties/max_tdp_w", CatalogBounds.TDP_W),
                Map.entry("/properties/thermal/properties/inlet/items/properties/max_inlet_c", CatalogBounds.INLET_C),
                Map.entry("/properties/power/properties/base_w", CatalogBounds.BASE_W),
                Map.entry("/properties/power/properties/budget_w", CatalogBounds.BUDGET_W),
                Map.entry(supply + "count", CatalogBounds.SUPPLY_COUNT),
                Map.entry(supply + "redundant", CatalogBounds.REDUNDANT),
                Map.entry(supply + "watts", CatalogBounds.SUPPLY_W),
                Map.entry(supply + "low_line_watts", CatalogBounds.LOW_LINE_W),
                Map.entry(supply + "efficiency/additionalProperties", CatalogBounds.EFFICIENCY_PERCENT)));
        assertRanges("enclosure", Map.of("/properties/bays", CatalogBounds.BAYS, "/properties/power/properties/base_w", CatalogBounds.BASE_W,
                "/properties/power/properties/budget_w", CatalogBounds.BUDGET_W, supply + "count", CatalogBounds.SUPPLY_COUNT,
                supply + "redundant", CatalogBounds.REDUNDANT, supply + "watts", CatalogBounds.SUPPLY_W,
                supply + "low_line_watts", CatalogBounds.LOW_LINE_W,
                supply + "efficiency/additionalProperties", CatalogBounds.EFFICIENCY_PERCENT));
    }

    @ParameterizedTest
    @ValueSource(strings = {"quote", "build", "upgrade"})
    void rangesOfRequestsAreTheReaders(String kind) throws IOException {
        String require = "/properties/require/properties/";
        String limit = "/properties/limit/properties/";
        assertRanges(kind, Map.ofEntries(
                Map.entry("/properties/machines", RequestBounds.MACHINES),
                Map.entry("/properties/on_hand/additionalProperties", RequestBounds.ON_HAND),
                Map.entry("/properties/licence/properties/per_core", RequestBounds.LICENCE),
                Map.entry("/properties/licence/properties/per_processor", RequestBounds.LICENCE),
                Map.entry(require + "cores", RequestBounds.CORES), Map.entry(require + "memory_gb", RequestBounds.MEMORY_GB),
                Map.entry(require + "bandwidth_gbs", RequestBounds.BANDWIDTH_GBS), Map.entry(require + "throughput", RequestBounds.THROUGHPUT),
                Map.entry(require + "base_ghz", RequestBounds.GHZ), Map.entry(require + "all_core_ghz", RequestBounds.GHZ),
                Map.entry(require + "gb_per_core", RequestBounds.GB_PER_CORE), Map.entry(require + "gbs_per_core", RequestBounds.GBS_PER_CORE),
                Map.entry(require + "spare_slots", RequestBounds.SPARE_SLOTS), Map.entry(require + "processors", RequestBounds.PROCESSORS),
                Map.entry(limit + "price", RequestBounds.PRICE), Map.entry(limit + "power_w", RequestBounds.POWER_W),
                Map.entry(limit + "lead_days", RequestBounds.LEAD_DAYS), Map.entry(limit + "inlet_c", RequestBounds.INLET_C),
                Map.entry(limit + "altitude_m", RequestBounds.ALTITUDE_M), Map.entry(limit + "mains_v", RequestBounds.MAINS_V)));
        assertRanges("quote", Map.of("/properties/alternatives", RequestBounds.ALTERNATIVES, "/properties/step", RequestBounds.STEP,
                "/properties/worth/properties/gb", RequestBounds.WORTH));
        assertRanges("upgrade", Map.of("/properties/trade_in", RequestBounds.TRADE_IN,
                "/properties/build/properties/processors", RequestBounds.PROCESSORS,
                "/properties/build/properties/supply_count", RequestBounds.SUPPLY_COUNT));
        assertRanges("order", Map.of("/properties/suppliers_max", RequestBounds.SUPPLIERS, "/properties/delivery_charge", RequestBounds.CHARGE,
                "/properties/module_part_charge", RequestBounds.CHARGE, "/properties/on_hand/additionalProperties", RequestBounds.ON_HAND,
                "/$defs/line/properties/priority", RequestBounds.PRIORITY));
        assertRanges("build", Map.of("/properties/processors", RequestBounds.PROCESSORS, "/properties/supply_count", RequestBounds.SUPPLY_COUNT));
    }

    /** A line has the keys of a quote, with their ranges, but for those that concern one answer or the whole order. */
    @Test
    void aLineOfAnOrderIsAQuote() throws IOException {
        JsonNode quote = schema("quote").at("/properties");
        JsonNode line = schema("order").at("/$defs/line/properties");
        Set<String> keys = new TreeSet<>(names(quote));
        keys.removeAll(Set.of("kind", "catalog", "alternatives", "step", "on_hand"));
        keys.addAll(Set.of("priority", "uniform"));
        assertThat(names(line)).isEqualTo(keys);
        for (String same : Set.of("platforms", "require", "limit", "worth", "licence", "forbid", "use")) {
            assertThat(line.get(same)).as(same).isEqualTo(quote.get(same));
        }
        assertThat(line.at("/machines/maximum")).isEqualTo(quote.at("/machines/maximum"));
        JsonNode lines = schema("order").at("/properties/lines/oneOf");
        assertThat(lines.at("/0/maxItems").decimalValue()).isEqualByComparingTo(RequestBounds.LINES.max());
        assertThat(lines.at("/1/maxProperties").decimalValue()).isEqualByComparingTo(RequestBounds.LINES.max());
    }

    private static Set<String> names(JsonNode properties) {
        Set<String> names = new TreeSet<>();
        properties.fieldNames().forEachRemaining(names::add);
        return names;
    }

    private static JsonNode schema(String name) throws IOException {
        return new ObjectMapper().readTree(SCHEMAS.resolve(name + ".schema.json").toFile());
    }

    private static void assertRanges(String schema, Map<String, Bounds> ranges) throws IOException {
        JsonNode root = new ObjectMapper().readTree(SCHEMAS.resolve(schema + ".schema.json").toFile());
        ranges.forEach((pointer, bounds) -> {
            JsonNode range = root.at(pointer);
            assertThat(range.path(bounds.above() ? "exclusiveMinimum" : "minimum").decimalValue())
                    .as("least of " + schema + pointer).isEqualByComparingTo(bounds.min());
            assertThat(range.path("maximum").decimalValue()).as("most of " + schema + pointer).isEqualByComparingTo(bounds.max());
        });
    }
}
